package io.github.wattledger.cli;

import static java.util.Objects.requireNonNull;

import io.github.wattledger.cli.report.html.Browser;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** One browser for all tests of a class, which are skipped where there is none. */
final class OneBrowser implements BeforeAllCallback, AfterAllCallback {
    private @Nullable Browser found;

    @Override
    public void beforeAll(ExtensionContext context) {
        found = Browser.find().orElse(null);
        Assumptions.assumeTrue(found != null, Browser.MISSING);
    }

    @Override
    public void afterAll(ExtensionContext context) {
        if (found != null) {
            found.close();
        }
    }

    Browser get() {
        return requireNonNull(found);
    }

    /** What a script gives, as text. */
    String text(String script) {
        return String.valueOf(get().run("return " + script));
    }
}

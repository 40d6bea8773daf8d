package io.github.wattledger.cli.report.html;

import gg.jte.Content;
import gg.jte.TemplateOutput;

/** Characters that stand in a page as they are: drawings, and this project's own script and style. */
public final class Markup implements Content {
    private final String text;

    /** Only from this package, and only of text in which nothing from outside is left unescaped. */
    Markup(String text) {
        this.text = text;
    }

    @Override
    public void writeTo(TemplateOutput output) {
        output.writeContent(text);
    }

    @Override
    public String toString() {
        return text;
    }
}

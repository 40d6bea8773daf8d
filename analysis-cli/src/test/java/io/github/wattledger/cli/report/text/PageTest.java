package io.github.wattledger.cli.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PageTest {
    @Test
    void aLineOf80ColumnsStaysWhole() {
        Page page = new Page();
        page.paragraph("a".repeat(39) + " " + "b".repeat(40));
        assertThat(page.toString()).isEqualTo("a".repeat(39) + " " + "b".repeat(40) + "\n");
    }

    @Test
    void aLineOf81ColumnsGoesOnUnderTheIndent() {
        Page page = new Page();
        page.wrapped("1. ", "   ", "a".repeat(40) + " " + "b".repeat(37));
        assertThat(page.toString()).isEqualTo("1. " + "a".repeat(40) + "\n   " + "b".repeat(37) + "\n");
    }

    @Test
    void aWordLongerThanALineIsCut() {
        Page page = new Page();
        page.wrapped("1. ", "   ", "so " + "a".repeat(100));
        assertThat(page.toString()).isEqualTo("1. so\n   " + "a".repeat(77) + "\n   " + "a".repeat(23) + "\n");
    }

    /** Wide letters take two columns in a terminal (Unicode Annex 11). */
    @Test
    void wideLettersCountTwice() {
        assertThat(Page.columns("\u6d77\u5cb8")).isEqualTo(4);
        assertThat(Page.columns("e\u0301")).isEqualTo(1);
        assertThat(Page.columns("\u00fc")).isEqualTo(1);
    }
}

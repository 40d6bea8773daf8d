package io.github.wattledger.cli.report.html;

/**
 * What every page has.
 *
 * @param title its title
 * @param policy what it may run and load: its own script and style, nothing else
 * @param style the style
 * @param library the chart library, or empty
 * @param script the page's own script, or empty
 * @param licence the chart library's licence, or empty
 */
public record Frame(String title, String policy, Markup style, Markup library, Markup script, String licence) {
    /** Of a page with charts that move. */
    static Frame withCharts(String title) {
        String style = Assets.chartStyle() + Assets.own("page.css");
        String library = Assets.chartScript();
        String script = Assets.own("timeline.js");
        return new Frame(
                title,
                Assets.policy(style, library, script),
                new Markup(style),
                new Markup(library),
                new Markup(script),
                Assets.chartLicence());
    }

    /** Of a page that runs no script. */
    static Frame still(String title) {
        String style = Assets.own("page.css");
        return new Frame(title, Assets.policy(style), new Markup(style), new Markup(""), new Markup(""), "");
    }

    /** Whether the page runs a script. */
    public boolean isMoving() {
        return !licence.isEmpty();
    }
}

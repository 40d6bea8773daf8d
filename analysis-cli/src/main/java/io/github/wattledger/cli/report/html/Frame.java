package io.github.wattledger.cli.report.html;

/**
 * What every page has.
 *
 * @param title its title
 * @param parts its style and scripts
 */
public record Frame(String title, Parts parts) {
    private static final Parts STILL = still();
    private static final Parts MOVING = moving();

    /**
     * What pages of one kind have in common, made once for all of them.
     *
     * @param policy what a page may run and load: its own script and style, nothing else
     * @param style the style
     * @param library the chart library, or empty
     * @param script the page's own script, or empty
     * @param licence the chart library's licence, or empty
     */
    public record Parts(String policy, Markup style, Markup library, Markup script, String licence) {}

    /** Of a page with charts that move. */
    static Frame withCharts(String title) {
        return new Frame(title, MOVING);
    }

    /** Of a page that runs no script. */
    static Frame still(String title) {
        return new Frame(title, STILL);
    }

    /** Of a card to print, black on white. */
    static Frame card(String title) {
        String style = Assets.own("card.css");
        return new Frame(title, new Parts(Assets.policy(style), new Markup(style), new Markup(""), new Markup(""), ""));
    }

    private static Parts moving() {
        String style = Assets.chartStyle() + Assets.own("page.css");
        String library = Assets.chartScript();
        String script = Assets.own("timeline.js");
        return new Parts(
                Assets.policy(style, library, script),
                new Markup(style),
                new Markup(library),
                new Markup(script),
                Assets.chartLicence());
    }

    private static Parts still() {
        String style = Assets.own("page.css");
        return new Parts(Assets.policy(style), new Markup(style), new Markup(""), new Markup(""), "");
    }

    /** Whether the page runs a script. */
    public boolean isMoving() {
        return !parts.licence().isEmpty();
    }
}

package io.github.wattledger.compare;

/** What kind of road a stretch is, by its mean grade. */
public enum Ground {
    /** At least 2 % up on average. */
    CLIMB("climb"),
    /** At least 2 % down on average. */
    DESCENT("descent"),
    /** Less than 2 % up and down on average. */
    FLAT("flat or rolling"),
    /** There is no altitude. */
    UNKNOWN("no altitude");

    private final String words;

    Ground(String words) {
        this.words = words;
    }

    /** The ground in a few words, for people. */
    public String words() {
        return words;
    }
}

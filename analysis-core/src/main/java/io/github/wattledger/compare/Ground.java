package io.github.wattledger.compare;

/** What kind of road a stretch is, by its mean grade. */
public enum Ground {
    /** At least 2 % up on average. */
    CLIMB("climb", "climb"),
    /** At least 2 % down on average. */
    DESCENT("descent", "descent"),
    /** Less than 2 % up and down on average. */
    FLAT("flat", "flat or rolling"),
    /** There is no altitude. */
    UNKNOWN("unknown", "no altitude");

    private final String id;
    private final String words;

    Ground(String id, String words) {
        this.id = id;
        this.words = words;
    }

    /** The ground in one word, for programs. */
    public String id() {
        return id;
    }

    /** The ground in a few words, for people. */
    public String words() {
        return words;
    }
}

package io.github.wattledger.simulation.trial;

import java.util.List;
import java.util.stream.LongStream;

/**
 * Reviews many races whose truth is known and prints how often the review is right, as Markdown:
 *
 * <pre>mvn -q -Pjudgement -pl analysis-core test-compile exec:java -Draces=300 -Dseed=1</pre>
 *
 * <p>or, for one race with all its details:
 *
 * <pre>mvn -q -Pjudgement -pl analysis-core test-compile exec:java -Drace=17</pre>
 */
public final class JudgementTrial {
    private JudgementTrial() {}

    /**
     * Prints the score of many races, or one race.
     *
     * @param args how many races, the first seed, and the seed of the one race to show, or {@code none}
     */
    public static void main(String... args) {
        if (args.length != 3) {
            throw new IllegalArgumentException("expected: RACES FIRST_SEED RACE_OR_none");
        }
        if (!args[2].equals("none")) {
            System.out.print(new RaceSheet(Long.parseLong(args[2])).markdown());
            return;
        }
        long first = Long.parseLong(args[1]);
        long began = System.nanoTime();
        List<TrialResult> results = LongStream.range(first, first + Integer.parseInt(args[0]))
                .parallel()
                .mapToObj(TrialResult::of)
                .toList();
        System.out.print(new Scoreboard(results).markdown());
        System.out.printf("%nSeeds from %d on, %d s.%n", first, (System.nanoTime() - began) / 1_000_000_000L);
    }
}

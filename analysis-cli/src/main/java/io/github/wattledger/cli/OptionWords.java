package io.github.wattledger.cli;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.rig.Position;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;

/** The options whose value is one of a few words. */
final class OptionWords {
    private OptionWords() {}

    /** Lets a program and its commands take the words of those options whose value is one of a few. */
    static void register(CommandLine program) {
        register(program, Effort.class);
        register(program, FindingKind.class);
        register(program, InspectionFormat.class);
        register(program, Position.class);
        register(program, ReportFormat.class);
        register(program, SeasonFormat.class);
        register(program, Units.class);
    }

    private static <E extends Enum<E>> void register(CommandLine program, Class<E> type) {
        program.registerConverter(type, value -> oneOf(type.getEnumConstants(), value));
    }

    /** The words of an option whose value is one of a few. */
    static List<String> words(Enum<?>[] constants) {
        return Arrays.stream(constants).map(OptionWords::word).toList();
    }

    /** The word of a constant: its name in lower case, with hyphens between its parts. */
    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The constant of a word, in letters of any case. */
    private static <E extends Enum<E>> E oneOf(E[] constants, String value) {
        for (E each : constants) {
            if (word(each).equalsIgnoreCase(value.strip())) {
                return each;
            }
        }
        List<String> words = words(constants);
        int last = words.size() - 1;
        String all = String.join(", ", words.subList(0, last)) + " or " + words.get(last);
        throw new TypeConversionException((words.size() > 4 ? "expected one of " : "expected ") + all);
    }
}

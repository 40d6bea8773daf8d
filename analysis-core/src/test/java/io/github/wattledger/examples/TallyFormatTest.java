package io.github.wattledger.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.Series;
import io.github.wattledger.season.SeasonRequest;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRun;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example of {@code docs/adding-a-reader.md}, found and used as any reader of one's own would be. */
class TallyFormatTest {
    private static ReadResult read(String text) throws UnreadableRideException {
        return RideFiles.read(RideInput.of(text.getBytes(StandardCharsets.UTF_8), "ride.tally"), ReadOptions.DEFAULT);
    }

    @Test
    void isFoundByTheDoor() throws UnreadableRideException {
        ReadResult result = read("TALLY 2024-05-04T07:00:00Z\n231 141\n- 142\n");
        assertThat(result.format()).isEqualTo("Tally");
        Samples samples = result.recordings().get(0).samples();
        assertThat(samples.epochSecond(1)).isEqualTo(1_714_806_001L);
        assertThat(samples.column(Channel.POWER)).isEqualTo(Series.of(231, Double.NaN));
        assertThat(samples.column(Channel.HEART_RATE)).isEqualTo(Series.of(141, 142));
    }

    @Test
    void isAskedBeforeTheFormatsOfTheLibrary() {
        // This could be a table as well.
        assertThatThrownBy(() -> read("TALLY time,power\n5,200\n"))
                .isInstanceOf(UnreadableRideException.class)
                .hasMessage("ride.tally: has no time in its first line; write it as 2024-05-04T07:00:00Z");
    }

    @Test
    void aSeasonFindsItsFilesByTheirEnding(@TempDir Path temp) throws Exception {
        Path folder = Files.createDirectory(temp.resolve("rides"));
        String seconds = "200 140\n".repeat(1200);
        Files.writeString(folder.resolve("a.TALLY"), "TALLY 2024-05-04T07:00:00Z\n" + seconds);
        Files.writeString(folder.resolve("notes.txt"), "TALLY 2024-05-05T07:00:00Z\n" + seconds);
        SeasonReview season = SeasonRun.run(SeasonRequest.of(List.of(folder), temp.resolve("store.sqlite")));
        assertThat(season.rides()).extracting(ride -> ride.source().file()).containsExactly("a.TALLY");
        assertThat(season.skipped()).isEmpty();
    }

    @Test
    void keepsWhatComesBeforeTheDamage() throws UnreadableRideException {
        assertThat(read("TALLY 2024-05-04T07:00:00Z\n231 141\n232 1").notes()).isEmpty();
        assertThat(read("TALLY 2024-05-04T07:00:00Z\n231 141\n232").notes())
                .extracting(ReadNote::text)
                .containsExactly("Line 3 is broken. The 1 sample up to there was read.");
    }
}

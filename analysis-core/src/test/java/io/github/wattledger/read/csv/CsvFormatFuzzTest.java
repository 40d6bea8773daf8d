package io.github.wattledger.read.csv;

import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.wattledger.testing.FuzzedReading;

/** Replays the seeds and finds beside it in every build; docs/adding-a-reader.md says how to search for more. */
class CsvFormatFuzzTest {
    @FuzzTest(maxDuration = "10m")
    void givesAResultOrOneLine(byte[] content) {
        FuzzedReading.check(() -> new CsvFormat().read(content, FuzzedReading.REQUEST));
    }
}

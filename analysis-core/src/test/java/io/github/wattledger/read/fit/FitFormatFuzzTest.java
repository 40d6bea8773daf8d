package io.github.wattledger.read.fit;

import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.wattledger.testing.FuzzedReading;

/** Replays the seeds and finds beside it in every build; docs/adding-a-reader.md says how to search for more. */
class FitFormatFuzzTest {
    @FuzzTest(maxDuration = "10m")
    void givesAResultOrOneLine(byte[] content) {
        FuzzedReading.check(() -> new FitFormat().read(content, FuzzedReading.REQUEST));
    }
}

package io.github.wattledger.json;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import java.util.List;

/** The quality of a recording, and notes on it. */
final class JsonQuality {
    private JsonQuality() {}

    static void quality(JsonWriter json, QualityReport quality) {
        json.begin("quality");
        json.whole("recordedSeconds", quality.recordedSeconds());
        json.whole("missingPowerSeconds", quality.missingPowerSeconds());
        json.whole("repairedSamples", quality.repairedSamples());
        notes(json, quality.notes());
        json.end();
    }

    static void notes(JsonWriter json, List<QualityNote> notes) {
        json.objects("notes", notes, note -> {
            json.string("code", note.code());
            json.wholeOrNull("seconds", note.seconds());
            json.string("text", note.text());
        });
    }
}

package io.github.wattledger.json;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.RideNotes;

/** The names and values of what a rider wrote down about a ride. */
final class JsonNotes {
    private JsonNotes() {}

    static void notes(JsonWriter json, RideNotes notes) {
        json.begin("notes");
        json.string("event", notes.event());
        json.string("rider", notes.rider());
        json.string("feel", notes.feel());
        json.string("heat", notes.heat());
        json.series(
                "eatenGPerHour",
                Series.of(notes.eatenGPerHour().stream()
                        .mapToDouble(Double::doubleValue)
                        .toArray()));
        json.objects("stopsNotChosen", notes.stopsNotChosen(), stop -> {
            json.string("what", stop.what());
            json.whole("startSeconds", stop.fromSecond());
            json.wholeOrNull("endSeconds", stop.toSecond());
        });
        json.objects("inBunch", notes.inBunch(), (Interval when) -> {
            json.whole("startSeconds", when.fromSecond());
            json.whole("endSeconds", when.toSecond());
        });
        json.string("agreed", notes.agreed());
        json.end();
    }
}

package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ride.DeviceTotals;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The declarations against the records that hold the values: each component has its declaration, and is read by it. */
class LoadNumberTest {
    @Test
    void everyNumberOfALoadIsDeclaredAndReadFromItsOwnComponent() {
        RideLoad load = new RideLoad(
                1, 2, 3, 4, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0, 17.0, 18.0, List.of(),
                List.of());
        Map<String, Double> expected = new LinkedHashMap<>();
        double value = 1;
        for (RecordComponent component : RideLoad.class.getRecordComponents()) {
            if (component.getType() != List.class) {
                expected.put(component.getName(), value++);
            }
        }
        Map<String, Double> declared = new LinkedHashMap<>();
        for (LoadNumber number : LoadNumber.values()) {
            declared.put(number.id(), number.of(load));
        }
        assertThat(declared).containsExactlyEntriesOf(expected);
    }

    @Test
    void everyTotalOfADeviceIsReadByTheNumberOfItsName() {
        DeviceTotals totals =
                new DeviceTotals(1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0);
        Map<String, Double> expected = new LinkedHashMap<>();
        double value = 1;
        for (RecordComponent component : DeviceTotals.class.getRecordComponents()) {
            expected.put(component.getName(), value++);
        }
        Map<String, Double> declared = new LinkedHashMap<>();
        for (LoadNumber number : LoadNumber.values()) {
            Double stored = number.of(totals);
            if (stored != null) {
                declared.put(number.id(), stored);
            }
        }
        assertThat(declared).containsExactlyEntriesOf(expected);
    }

    @Test
    void noTwoNumbersAreCalledTheSame() {
        assertThat(Arrays.stream(LoadNumber.values()).map(LoadNumber::label)).doesNotHaveDuplicates();
    }

    /** Units end the names of numbers in this project, so the declared unit and the name have to agree. */
    @Test
    void theUnitIsTheEndOfTheName() {
        Map<String, String> ends = Map.of(
                "s",
                "Seconds",
                "m",
                "M",
                "m/s",
                "Mps",
                "kJ",
                "KJ",
                "W",
                "W",
                "bpm",
                "Bpm",
                "rpm",
                "Rpm",
                "W a beat",
                "PerBeat", // wattsPerBeat, as wattsPerKg: the unit is the whole name
                "%",
                "Percent");
        for (LoadNumber number : LoadNumber.values()) {
            String unit = number.quantity().unit();
            if (unit.isEmpty()) {
                assertThat(ends.values()).as(number.id()).noneMatch(number.id()::endsWith);
            } else {
                assertThat(number.id()).endsWith(ends.get(unit));
            }
        }
    }
}

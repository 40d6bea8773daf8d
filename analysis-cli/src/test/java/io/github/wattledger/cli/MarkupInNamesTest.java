package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.garmin.fit.DateTime;
import com.garmin.fit.DeveloperDataIdMesg;
import com.garmin.fit.DeveloperField;
import com.garmin.fit.DeviceIndex;
import com.garmin.fit.DeviceInfoMesg;
import com.garmin.fit.Event;
import com.garmin.fit.EventType;
import com.garmin.fit.FieldDescriptionMesg;
import com.garmin.fit.File;
import com.garmin.fit.FileEncoder;
import com.garmin.fit.FileIdMesg;
import com.garmin.fit.Fit;
import com.garmin.fit.FitBaseType;
import com.garmin.fit.LapMesg;
import com.garmin.fit.Manufacturer;
import com.garmin.fit.RecordMesg;
import com.garmin.fit.SessionMesg;
import com.garmin.fit.Sport;
import com.garmin.fit.SportMesg;
import com.garmin.fit.UserProfileMesg;
import com.garmin.fit.WorkoutMesg;
import com.garmin.fit.WorkoutStepMesg;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Markup in every text that a FIT file can hold: names of devices, sports, laps (by the steps of a workout and by developer
 * fields), riders and files. No page may have another element because of it.
 */
class MarkupInNamesTest {
    /** 1989-12-31T00:00:00Z, the zero of FIT timestamps. */
    private static final long FIT_EPOCH_SECOND = 631_065_600L;

    private static final long FIRST = Instant.parse("2026-05-01T08:00:00Z").getEpochSecond() - FIT_EPOCH_SECOND;
    private static final int SECONDS = 1500;
    private static final Pattern ELEMENT = Pattern.compile("<\\s*(/?[a-zA-Z!][a-zA-Z0-9-]*)");
    private static final Pattern QUOTED = Pattern.compile("=\"[^\"<>]*\"");
    /** An attribute that holds a script, within a tag whose quoted values were taken out. */
    private static final Pattern HANDLER = Pattern.compile("<[a-zA-Z][^<>]*\\son[a-z]+\\s*=");

    private static final String HARMLESS = "Harmless name";

    @TempDir
    Path temp;

    private static Path write(Path file, String name) {
        FileEncoder encoder = new FileEncoder(file.toFile(), Fit.ProtocolVersion.V2_0);
        writeNames(encoder, name);
        DeveloperDataIdMesg application = new DeveloperDataIdMesg();
        application.setDeveloperDataIndex((short) 0);
        application.setApplicationVersion(1L);
        encoder.write(application);
        FieldDescriptionMesg description = new FieldDescriptionMesg();
        description.setDeveloperDataIndex((short) 0);
        description.setFieldDefinitionNumber((short) 0);
        description.setFitBaseTypeId(FitBaseType.STRING);
        description.setFieldName(0, name);
        description.setUnits(0, name);
        encoder.write(description);
        for (int second = 0; second < SECONDS; second++) {
            RecordMesg record = new RecordMesg();
            record.setTimestamp(new DateTime(FIRST + second));
            record.setPower(200);
            record.setHeartRate((short) 140);
            record.setSpeed(8f);
            record.setDistance(8f * second);
            encoder.write(record);
        }
        LapMesg lap = new LapMesg();
        lap.setTimestamp(new DateTime(FIRST + 900));
        lap.setStartTime(new DateTime(FIRST));
        lap.setTotalElapsedTime(900f);
        lap.setWktStepIndex(0);
        DeveloperField named = new DeveloperField(description, application);
        named.setValue(name);
        lap.addDeveloperField(named);
        encoder.write(lap);
        SessionMesg session = new SessionMesg();
        session.setTimestamp(new DateTime(FIRST + SECONDS - 1));
        session.setStartTime(new DateTime(FIRST));
        session.setSport(Sport.CYCLING);
        session.setSportProfileName(name);
        session.setEvent(Event.SESSION);
        session.setEventType(EventType.STOP);
        session.setTotalElapsedTime((float) SECONDS);
        session.setTotalTimerTime((float) SECONDS);
        encoder.write(session);
        encoder.close();
        return file;
    }

    private static void writeNames(FileEncoder encoder, String name) {
        FileIdMesg id = new FileIdMesg();
        id.setType(File.ACTIVITY);
        id.setManufacturer(Manufacturer.DEVELOPMENT);
        id.setProductName(name);
        id.setTimeCreated(new DateTime(FIRST));
        encoder.write(id);
        DeviceInfoMesg device = new DeviceInfoMesg();
        device.setTimestamp(new DateTime(FIRST));
        device.setDeviceIndex(DeviceIndex.CREATOR);
        device.setManufacturer(Manufacturer.DEVELOPMENT);
        device.setProductName(name);
        encoder.write(device);
        UserProfileMesg user = new UserProfileMesg();
        user.setFriendlyName(name);
        encoder.write(user);
        SportMesg sport = new SportMesg();
        sport.setSport(Sport.CYCLING);
        sport.setName(name);
        encoder.write(sport);
        WorkoutMesg workout = new WorkoutMesg();
        workout.setWktName(name);
        encoder.write(workout);
        WorkoutStepMesg step = new WorkoutStepMesg();
        step.setMessageIndex(0);
        step.setWktStepName(name);
        encoder.write(step);
    }

    private static String out(String... words) {
        Outcome outcome = Outcome.of(words);
        assertThat(outcome.status()).as(outcome.err()).isZero();
        return outcome.out();
    }

    /** All pages of a ride with such names: of the ride, of a comparison, of a season, and those of a folder. */
    private List<String> pages(String folder, String name) throws IOException {
        Path rides = Files.createDirectories(temp.resolve(folder));
        String ride = write(rides.resolve("ride.fit"), name).toString();
        Path pages = temp.resolve(folder + "-pages");
        String season = out("season", rides.toString(), "--format", "html", "--pages", pages.toString());
        try (Stream<Path> files = Files.list(pages)) {
            List<Path> written = files.sorted().toList();
            assertThat(written).hasSize(2);
            return List.of(
                    out("review", ride, "--format", "html"),
                    season,
                    Files.readString(written.get(0)),
                    Files.readString(written.get(1)));
        }
    }

    private static List<String> elements(String page) {
        return ELEMENT.matcher(page).results().map(found -> found.group(1)).toList();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "</script><script>alert(2)//",
                "<img src=q onerror=alert(3)>",
                "\" onmouseover=\"alert(4)",
                "' onfocus='alert(5)' autofocus='",
                "</title></style><svg onload=alert(6)>",
                "--><b>bold</b><!--",
                "javascript:alert(7)"
            })
    void addsNoElementToAnyPage(String name) throws IOException {
        List<String> harmless = pages("harmless", HARMLESS);
        List<String> hostile = pages("hostile", name);
        // The name does stand in the page of the ride, so that this test looks at something.
        assertThat(harmless.get(0)).contains(HARMLESS);
        assertThat(hostile.get(0)).contains(escaped(name));
        for (int i = 0; i < harmless.size(); i++) {
            assertThat(elements(hostile.get(i))).isEqualTo(elements(harmless.get(i)));
            if (!escaped(name).equals(name)) {
                assertThat(hostile.get(i)).doesNotContain(name);
            }
            assertThat(hostile.get(i)).doesNotContain("href=\"javascript:");
            assertThat(HANDLER.matcher(QUOTED.matcher(hostile.get(i)).replaceAll("\"\""))
                            .find())
                    .isFalse();
        }
    }

    /** Text of an element, by the HTML standard: these characters must not stand for themselves. */
    private static String escaped(String name) {
        return name.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}

package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.ProfileFromRides;
import io.github.wattledger.cli.profile.RiderFile;
import io.github.wattledger.cli.profile.RiderProfile;
import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.season.SeasonStoreException;
import io.github.wattledger.season.StoredSeason;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code wattledger rider}: help with the rider profile. */
@Command(
        name = "rider",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = {
            "wattledger rider --example [--output FILE]",
            "       wattledger rider --from-season FOLDER [--rider FILE] [--output FILE]"
        },
        header = "Helps with the rider profile that --rider takes.",
        footer = {
            "",
            "For instance: wattledger rider --example --output rider.toml",
            "",
            "Exit status: 0 done; 1 internal failure, or the profile could not be written;",
            "2 wrong usage; 3 the rider profile or the season's store could not be read."
        })
final class RiderCommand implements Callable<Integer> {
    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    @Option(names = "--example", description = "Print a commented profile to begin with.")
    private boolean example;

    @Option(
            names = "--from-season",
            paramLabel = "FOLDER",
            description =
                    "Print a profile from what your own rides say, to check and keep: the folder of which 'wattledger"
                            + " season' keeps your rides, or its store.")
    private @Nullable String seasonFolder;

    @Option(
            names = "--rider",
            paramLabel = "FILE",
            description = "With --from-season: the profile that you have, which is carried on.")
    private @Nullable String riderFile;

    @Mixin
    private OutputOption output = new OutputOption();

    /**
     * A command.
     *
     * @param out where the profile goes, as UTF-8 bytes
     */
    RiderCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() throws UnreadableProfileException, UnreadableStoreException, IOException {
        if (example == (seasonFolder != null)) {
            throw Usage.error(spec, "one of --example and --from-season is needed");
        }
        if (example && riderFile != null) {
            throw Usage.error(spec, "--rider belongs to --from-season");
        }
        Path target = output.file(spec, List.of());
        if (target != null && Files.exists(target)) {
            throw new OutputFailure("cannot write " + target + ": it is there already; name another file");
        }
        String profile = seasonFolder == null ? RiderFile.example() : fromSeason(seasonFolder);
        OutputFile.deliver(new StringBuilder(profile), target, out);
        return ExitStatus.DONE.code();
    }

    private String fromSeason(String folder) throws UnreadableProfileException, UnreadableStoreException {
        Path store = SeasonStoreFile.in(Usage.path(spec, "--from-season", folder));
        RiderProfile profile =
                riderFile == null ? RiderProfile.EMPTY : RiderFile.read(Usage.path(spec, "--rider", riderFile));
        try {
            return ProfileFromRides.write(StoredSeason.rider(store, profile.rider(), ZoneOffset.UTC), folder);
        } catch (SeasonStoreException e) {
            throw new UnreadableStoreException("--from-season", e);
        }
    }
}

package io.github.wattledger.cli.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** One changed file; the same for the same seed, the same number and the same rides. */
final class FuzzInput {
    private static final double LONG_SHARE = 0.02;

    private final String name;
    private final byte[] content;
    private final FuzzRides.Seed sound;
    private final List<String> changes;

    private FuzzInput(String name, byte[] content, FuzzRides.Seed sound, List<String> changes) {
        this.name = name;
        this.content = content;
        this.sound = sound;
        this.changes = List.copyOf(changes);
    }

    /** The file's name. */
    String name() {
        return name;
    }

    /** The changed bytes. */
    byte[] content() {
        return content;
    }

    /** The file as it was. */
    FuzzRides.Seed sound() {
        return sound;
    }

    /** What was changed. */
    List<String> changes() {
        return changes;
    }

    static FuzzInput of(FuzzRides rides, long seed, int execution) {
        Random random = random(seed, execution);
        FuzzRides.Seed sound = rides.any(random, random.nextDouble() < LONG_SHARE);
        List<String> changes = new ArrayList<>();
        byte[] content;
        if (random.nextInt(10) == 0) {
            content = sound.file();
        } else if (sound.messages().isEmpty()) {
            content = TextDamage.of(random, sound.text(), changes);
        } else {
            content = FitDamage.of(random, sound.messages(), changes);
        }
        if (random.nextInt(5) == 0) {
            content = damageBytes(random, content, changes);
        }
        String name = "ride-" + execution + "." + sound.extension();
        int packing = random.nextInt(60);
        if (packing == 0) {
            return new FuzzInput(name + ".gz", gzip(content), sound, changes);
        }
        if (packing == 1) {
            return new FuzzInput(name + ".zip", zip(name, content), sound, changes);
        }
        return new FuzzInput(name, content, sound, changes);
    }

    /** The random numbers of an execution, for all that is chosen in it. */
    static Random random(long seed, int execution) {
        return new Random(seed * 1_000_003 + execution);
    }

    private static byte[] damageBytes(Random random, byte[] content, List<String> changes) {
        byte[] changed = content.clone();
        if (changed.length == 0) {
            return changed;
        }
        switch (random.nextInt(4)) {
            case 0 -> {
                int length = random.nextInt(changed.length);
                changes.add("cut short to " + length + " bytes");
                return Arrays.copyOf(changed, length);
            }
            case 1 -> {
                byte[] both = Arrays.copyOf(changed, 2 * changed.length);
                System.arraycopy(content, 0, both, changed.length, changed.length);
                changes.add("appended to itself");
                return both;
            }
            case 2 -> {
                int bits = 1 + random.nextInt(8);
                for (int i = 0; i < bits; i++) {
                    int bit = random.nextInt(8 * changed.length);
                    changed[bit / 8] ^= (byte) (1 << (bit % 8));
                    changes.add("bit " + bit + " flipped");
                }
                return changed;
            }
            default -> {
                int from = random.nextInt(changed.length);
                int length = 1 + random.nextInt(64);
                for (int i = from; i < Math.min(changed.length, from + length); i++) {
                    changed[i] = (byte) random.nextInt(256);
                }
                changes.add(length + " bytes from " + from + " replaced");
                return changed;
            }
        }
    }

    private static byte[] gzip(byte[] content) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream packed = new GZIPOutputStream(bytes)) {
            packed.write(content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static byte[] zip(String name, byte[] content) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream packed = new ZipOutputStream(bytes)) {
            packed.putNextEntry(new ZipEntry(name));
            packed.write(content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}

package io.github.wattledger.cli.fuzz;

import io.github.wattledger.cli.fuzz.FitMessages.Field;
import io.github.wattledger.cli.fuzz.FitMessages.Layout;
import io.github.wattledger.cli.fuzz.FitMessages.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Changes a FIT file as a defect of a recorder, of a disk or of a program would; the check sum is right again. */
final class FitDamage {
    /** The field of a time stamp in every message of the FIT protocol. */
    private static final int TIMESTAMP = 253;

    private final Random random;
    private final List<Message> messages;
    private final List<String> done;

    private FitDamage(Random random, List<Message> messages, List<String> done) {
        this.random = random;
        this.messages = new ArrayList<>(messages);
        this.done = done;
    }

    /**
     * A changed file.
     *
     * @param done receives what was changed
     */
    static byte[] of(Random random, List<Message> messages, List<String> done) {
        FitDamage damage = new FitDamage(random, messages, done);
        int changes = 1 + random.nextInt(3);
        for (int i = 0; i < changes && damage.messages.size() > 2; i++) {
            damage.change();
        }
        return FitMessages.file(damage.messages);
    }

    private void change() {
        switch (random.nextInt(12)) {
            case 0, 1 -> flipBit();
            case 2, 3 -> setField();
            case 4, 5 -> setFieldOfARun();
            case 6 -> changeDefinition();
            case 7 -> removeRun();
            case 8 -> repeatRun();
            case 9 -> moveRun();
            case 10 -> setTimes();
            default -> insertBytes();
        }
    }

    private int anyMessage() {
        return random.nextInt(messages.size());
    }

    /** A data message with a field; rarely another one, which is then left as it is. */
    private int anyData() {
        for (int tries = 0; tries < 20; tries++) {
            int at = anyMessage();
            Layout layout = messages.get(at).layout();
            // Messages other than records are few; every second try looks for one of them.
            if (layout != null
                    && !layout.fields().isEmpty()
                    && (tries % 2 == 1 || !messages.get(at).isRecord())) {
                return at;
            }
        }
        return anyMessage();
    }

    private void flipBit() {
        int at = random.nextBoolean() ? anyData() : anyMessage();
        byte[] bytes = messages.get(at).bytes().clone();
        int bit = random.nextInt(8 * bytes.length);
        bytes[bit / 8] ^= (byte) (1 << (bit % 8));
        messages.set(at, new Message(bytes, messages.get(at).layout()));
        done.add("bit " + bit + " of message " + at + " flipped");
    }

    private void setField() {
        int at = anyData();
        Layout layout = messages.get(at).layout();
        if (layout == null || layout.fields().isEmpty()) {
            return;
        }
        Field field = layout.fields().get(random.nextInt(layout.fields().size()));
        write(at, field, special(field.size()));
        done.add("field " + field.number() + " of message " + at + " (kind " + layout.global() + ") set");
    }

    private void setFieldOfARun() {
        int from = anyData();
        Layout layout = messages.get(from).layout();
        if (layout == null || layout.fields().isEmpty()) {
            return;
        }
        Field field = layout.fields().get(random.nextInt(layout.fields().size()));
        int length = 1 + random.nextInt(random.nextInt(8) == 0 ? messages.size() : 60);
        boolean isSame = random.nextBoolean();
        byte[] value = special(field.size());
        for (int at = from; at < Math.min(messages.size(), from + length); at++) {
            if (layout.equals(messages.get(at).layout())) {
                write(at, field, isSame ? value : special(field.size()));
            }
        }
        done.add("field " + field.number() + " of " + length + " messages from " + from + " set");
    }

    private void write(int at, Field field, byte[] value) {
        byte[] bytes = messages.get(at).bytes().clone();
        for (int i = 0; i < field.size() && field.offset() + i < bytes.length; i++) {
            bytes[field.offset() + i] = value[i];
        }
        messages.set(at, new Message(bytes, messages.get(at).layout()));
    }

    /** Values at the ends of a field's range, and any. */
    private byte[] special(int size) {
        byte[] value = new byte[size];
        switch (random.nextInt(6)) {
            case 0 -> {}
            case 1 -> Arrays.fill(value, (byte) 0xFF);
            case 2 -> {
                Arrays.fill(value, (byte) 0xFF);
                value[Math.max(0, size - 1)] = 0x7F;
            }
            case 3 -> {
                Arrays.fill(value, (byte) 0xFF);
                value[0] = (byte) 0xFE;
            }
            case 4 -> value[Math.max(0, size - 1)] = (byte) 0x80;
            default -> random.nextBytes(value);
        }
        return value;
    }

    private void changeDefinition() {
        for (int tries = 0; tries < 50; tries++) {
            int at = tries < 40 ? random.nextInt(Math.min(60, messages.size())) : anyMessage();
            byte[] old = messages.get(at).bytes();
            if (messages.get(at).layout() == null && old.length > 6 && (old[0] & 0xC0) == 0x40) {
                byte[] bytes = old.clone();
                int place = 1 + random.nextInt(bytes.length - 1);
                bytes[place] = (byte) (random.nextBoolean() ? random.nextInt(256) : bytes[place] + 1);
                messages.set(at, new Message(bytes, null));
                done.add("byte " + place + " of the definition " + at + " changed");
                return;
            }
        }
    }

    private int runLength() {
        return 1 + random.nextInt(Math.min(messages.size() / 2, random.nextInt(4) == 0 ? 2000 : 30) + 1);
    }

    private List<Message> run(int from, int length) {
        return messages.subList(from, Math.min(messages.size(), from + length));
    }

    private void removeRun() {
        int from = anyMessage();
        int length = runLength();
        run(from, length).clear();
        done.add(length + " messages from " + from + " removed");
    }

    private void repeatRun() {
        int from = anyMessage();
        int length = runLength();
        List<Message> copy = new ArrayList<>(run(from, length));
        int to = random.nextBoolean() ? from : anyMessage();
        messages.addAll(to, copy);
        done.add(length + " messages from " + from + " repeated at " + to);
    }

    private void moveRun() {
        int from = anyMessage();
        List<Message> run = run(from, runLength());
        List<Message> moved = new ArrayList<>(run);
        run.clear();
        if (random.nextInt(3) == 0) {
            Collections.shuffle(moved, random);
        }
        int to = messages.isEmpty() ? 0 : random.nextInt(messages.size());
        messages.addAll(to, moved);
        done.add(moved.size() + " messages from " + from + " moved to " + to);
    }

    /** A clock that is set while it runs: by seconds, hours, days, or to anything. */
    private void setTimes() {
        int from = anyMessage();
        int length = random.nextBoolean() ? 1 : runLength();
        long[] leaps = {-1, 1, 2, 30, -30, 600, -600, 3600, 20_000, -90_000, 400_000, 1 << 30};
        long leap = leaps[random.nextInt(leaps.length)];
        for (int at = from; at < Math.min(messages.size(), from + length); at++) {
            Layout layout = messages.get(at).layout();
            if (layout == null) {
                continue;
            }
            for (Field field : layout.fields()) {
                if (field.number() == TIMESTAMP && field.size() == 4) {
                    addTo(at, field, layout.isBigEndian(), leap);
                }
            }
        }
        done.add("times of " + length + " messages from " + from + " moved by " + leap + " s");
    }

    private void addTo(int at, Field field, boolean isBigEndian, long leap) {
        byte[] bytes = messages.get(at).bytes();
        if (bytes.length < field.offset() + 4) {
            return;
        }
        long time = 0;
        for (int i = 0; i < 4; i++) {
            time |= (bytes[field.offset() + i] & 0xFFL) << (8 * (isBigEndian ? 3 - i : i));
        }
        byte[] value = new byte[4];
        for (int i = 0; i < 4; i++) {
            value[i] = (byte) ((time + leap) >> (8 * (isBigEndian ? 3 - i : i)));
        }
        write(at, field, value);
    }

    private void insertBytes() {
        byte[] bytes = new byte[1 + random.nextInt(random.nextInt(10) == 0 ? 300 : 6)];
        random.nextBytes(bytes);
        int at = anyMessage();
        messages.add(at, new Message(bytes, null));
        done.add(bytes.length + " bytes inserted before message " + at);
    }
}

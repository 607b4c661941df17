package boundwright.flight;

import boundwright.footfall.Sequence;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/**
 * The drills (sequence and rung) of which a deviation of their own is remembered, the one used last at the end: no few traits
 * fit every drill, so each may be a little longer or shorter than its flights' traits say. Immutable.
 *
 * @param keys one a slot, in the order of the slots; empty where a slot is free
 * @param used slots from the one used longest ago to the one used last
 */
record DrillSlots(List<String> keys, List<Integer> used) {
  /** How many are remembered; one more takes the place of the one used longest ago. */
  static final int MOST = 12;
  /** How far a drill may be from what its flights' traits say (relative standard deviation; judgement). */
  static final double SD = 0.02;

  /** How much of it a drill keeps at another rung (correlation; judgement). */
  static final double KEPT = 0.7;

  /** Variance of what is a drill's own, with or without the same sequence known at another rung. */
  static double variance(int kin) {
    return SD * SD * (kin < 0 ? 1 : 1 - KEPT * KEPT);
  }

  static final DrillSlots NONE = new DrillSlots(List.of(), List.of());

  DrillSlots {
    keys = List.copyOf(keys);
    used = List.copyOf(used);
  }

  /** Slot of a drill, -1 if it has none. */
  int of(Sequence sequence, int steps) {
    return keys.indexOf(key(sequence, steps));
  }

  /** Slot of the same sequence at the nearest other rung, -1 if there is none; of two alike the lower rung. */
  int kin(Sequence sequence, int steps) {
    String letters = sequence.letters();
    int best = -1;
    int apart = Integer.MAX_VALUE;
    for (int i = 0; i < keys.size(); i++) {
      String key = keys.get(i);
      if (key.startsWith(letters) && !Character.isLetter(key.charAt(letters.length()))) {
        int there = Integer.parseInt(key.substring(letters.length()));
        int away = 2 * Math.abs(there - steps) + (there > steps ? 1 : 0);
        if (there != steps && away < apart) {
          best = i;
          apart = away;
        }
      }
    }
    return best;
  }

  /** With this drill as the one used last. */
  DrillSlots with(Sequence sequence, int steps) {
    int slot = of(sequence, steps);
    if (slot >= 0 && used.get(used.size() - 1) == slot) {
      return this;
    }
    List<String> drills = new ArrayList<>(keys);
    if (slot < 0) {
      slot = drills.size() < MOST ? drills.size() : used.get(0);
      if (slot == drills.size()) {
        drills.add("");
      }
      drills.set(slot, key(sequence, steps));
    }
    List<Integer> order = new ArrayList<>(used);
    order.remove((Integer) slot);
    order.add(slot);
    return new DrillSlots(drills, order);
  }

  /** Whether a slot holds the same drill in {@code before}. */
  boolean same(DrillSlots before, int slot) {
    return slot < before.keys.size() && before.keys.get(slot).equals(keys.get(slot));
  }

  private static String key(Sequence sequence, int steps) {
    return sequence.letters() + steps;
  }

  byte[] bytes() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(keys.size());
    for (int i = 0; i < keys.size(); i++) {
      String key = keys.get(i);
      out.write(used.get(i));
      out.write(key.length());
      for (int c = 0; c < key.length(); c++) {
        out.write(key.charAt(c));
      }
    }
    return out.toByteArray();
  }

  static DrillSlots read(ByteBuffer in) {
    int n = in.get();
    List<String> keys = new ArrayList<>();
    List<Integer> used = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      used.add((int) in.get());
      int size = in.get();
      StringBuilder key = new StringBuilder(size);
      for (int c = 0; c < size; c++) {
        key.append((char) in.get());
      }
      keys.add(key.toString());
    }
    return new DrillSlots(keys, used);
  }
}

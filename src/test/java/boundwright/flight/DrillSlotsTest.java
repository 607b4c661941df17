package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.footfall.Sequence;
import java.nio.ByteBuffer;
import org.junit.jupiter.api.Test;

class DrillSlotsTest {
  private static final Sequence RRL = Sequence.parse("RRL");
  private static final Sequence RRLRRL = Sequence.parse("RRL x2");

  @Test
  void aSlotIsASequenceAtARung() {
    DrillSlots s = DrillSlots.NONE.with(RRL, 4).with(RRL, 6).with(RRLRRL, 4);
    assertThat(s.of(RRL, 4)).isZero();
    assertThat(s.of(RRL, 6)).isEqualTo(1);
    assertThat(s.of(RRLRRL, 4)).isEqualTo(2);
    assertThat(s.of(RRLRRL, 6)).isEqualTo(-1);
    assertThat(s.kin(RRLRRL, 6)).as("not the longer or shorter sequence").isEqualTo(2);
    assertThat(s.kin(RRL, 5)).as("of two as near, the lower rung").isZero();
    assertThat(s.kin(Sequence.parse("LLR"), 4)).isEqualTo(-1);
  }

  @Test
  void theOneUsedLongestAgoMakesRoom() {
    DrillSlots s = DrillSlots.NONE;
    for (int steps = 0; steps < DrillSlots.MOST; steps++) {
      s = s.with(RRL, steps);
    }
    DrillSlots full = s.with(RRL, 0);
    DrillSlots after = full.with(RRLRRL, 4);
    assertThat(after.of(RRL, 0)).as("used again").isZero();
    assertThat(after.of(RRL, 1)).as("used longest ago").isEqualTo(-1);
    assertThat(after.of(RRLRRL, 4)).isEqualTo(1);
    assertThat(after.same(full, 1)).isFalse();
    assertThat(after.same(full, 2)).isTrue();
  }

  @Test
  void bytesComeBack() {
    DrillSlots s = DrillSlots.NONE.with(RRL, 4).with(RRLRRL, 12).with(RRL, 4);
    assertThat(DrillSlots.read(ByteBuffer.wrap(s.bytes()))).isEqualTo(s);
  }
}

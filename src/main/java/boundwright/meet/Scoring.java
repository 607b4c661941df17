package boundwright.meet;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Points of a single event by {@code floor(a (x + b)^2 - 5000)} (World Athletics scoring: form read, coefficients memory), or of the
 * long jump in a combined event by its own table.
 */
public enum Scoring {
  /** Triple jump, men. */
  TRIPLE_JUMP_MEN("triple jump, men", Event.TRIPLE_JUMP, .4611, 98.63, null),
  /** Triple jump, women. */
  TRIPLE_JUMP_WOMEN("triple jump, women", Event.TRIPLE_JUMP, .4282, 105.53, null),
  /** Long jump, men. */
  LONG_JUMP_MEN("long jump, men", Event.LONG_JUMP, 1.929, 48.41, null),
  /** Long jump, women. */
  LONG_JUMP_WOMEN("long jump, women", Event.LONG_JUMP, 1.966, 49.24, null),
  /** Long jump of the decathlon. */
  DECATHLON("long jump of the decathlon", Event.LONG_JUMP, 0, 0, CombinedTable.DECATHLON),
  /** Long jump of the heptathlon. */
  HEPTATHLON("long jump of the heptathlon", Event.LONG_JUMP, 0, 0, CombinedTable.HEPTATHLON);

  private final String label;
  private final Event event;
  private final double a;
  private final double b;
  private final @Nullable CombinedTable combined;

  Scoring(String label, Event event, double a, double b, @Nullable CombinedTable combined) {
    this.label = label;
    this.event = event;
    this.a = a;
    this.b = b;
    this.combined = combined;
  }

  /** The tables of an event, those of women first. */
  public static List<Scoring> of(Event event) {
    return Stream.of(TRIPLE_JUMP_WOMEN, TRIPLE_JUMP_MEN, LONG_JUMP_WOMEN, LONG_JUMP_MEN, HEPTATHLON, DECATHLON).filter(s -> s.event == event).toList();
  }

  /** The same table among these. */
  public static Scoring of(CombinedTable table) {
    return table == CombinedTable.DECATHLON ? DECATHLON : HEPTATHLON;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }

  /** Of which jump. */
  public Event event() {
    return event;
  }

  /** The combined event whose table it is, or null for a single event. */
  public @Nullable CombinedTable combined() {
    return combined;
  }

  /** Where it stood. */
  public Source source() {
    return combined == null ? JumpSources.SCORING : combined.source();
  }

  /**
   * Points for a distance, which is rounded down to the centimetre first; never below 0.
   *
   * @param metres triple jump 3 to 19, long jump 1 to 10
   */
  public int points(double metres) {
    event.jump(event.label(), metres);
    if (combined != null) {
      return combined.points(metres);
    }
    double x = MeasureRule.CENTIMETRE.down(metres) + b;
    return (int) Math.max(0, Math.floor(a * x * x - 5000 + 1e-9));
  }
}

package boundwright.store;

import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.technique.FaultTick;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * What was said of the technique of a rep, in the words of files and the command line: {@code clean}, or faults as
 * {@code key} or {@code key@contact} separated by {@code ;}, or nothing if nobody looked.
 *
 * @param judged whether somebody looked
 * @param ticks what was seen wrong
 */
public record Judgement(boolean judged, List<FaultTick> ticks) {
  /** Takes a copy. */
  public Judgement {
    ticks = List.copyOf(ticks);
  }

  /**
   * Reads one.
   *
   * @throws RefusedException if it is neither
   */
  public static Judgement read(String text) {
    List<String> words =
        Arrays.stream(text.split(";")).map(w -> w.strip().toLowerCase(Locale.ROOT)).filter(w -> !w.isEmpty()).toList();
    if (words.equals(List.of(RepCsv.CLEAN))) {
      return new Judgement(true, List.of());
    }
    if (words.contains(RepCsv.CLEAN)) {
      throw new RefusedException("The faults '" + text.strip() + "' say clean and name a fault. Write clean alone, or only what was wrong.");
    }
    return new Judgement(!words.isEmpty(), FaultTick.parseAll(words));
  }

  /** Refuses a fault on a contact that the sequence does not have. */
  public Judgement within(Sequence sequence) {
    ticks.forEach(tick -> tick.within(sequence));
    return this;
  }

  /** The faults as a rep keeps them. */
  public List<String> faults() {
    return ticks.stream().map(FaultTick::written).toList();
  }
}

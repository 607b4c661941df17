package boundwright.season;

import boundwright.footfall.Foot;
import boundwright.load.account.DayLoad;
import boundwright.load.account.Work;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one athlete does on one day.
 *
 * @param kind what the day is for
 * @param venue key of the place; null for a meet, which is elsewhere
 * @param blocks in order
 */
public record Session(SessionKind kind, @Nullable String venue, List<Block> blocks) {
  /** Takes a copy. */
  public Session {
    blocks = List.copyOf(blocks);
  }

  /** As the load account sees it. */
  public DayLoad on(LocalDate day) {
    return new DayLoad(day, blocks.stream().map(Block::work).toList());
  }

  /** Contacts of both legs. */
  public int contacts() {
    return blocks.stream().map(Block::work).mapToInt(Work::contacts).sum();
  }

  /** Contacts of one leg. */
  public int contacts(Foot foot) {
    return blocks.stream().map(Block::work).mapToInt(w -> w.contacts(foot)).sum();
  }

  /** The longest approach in it [steps]. */
  public int steps() {
    return blocks.stream().map(Block::work).mapToInt(Work::approachSteps).max().orElse(0);
  }
}

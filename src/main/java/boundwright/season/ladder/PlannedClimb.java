package boundwright.season.ladder;

import boundwright.season.Climb;
import java.util.List;
import java.util.Objects;

/**
 * The climb of one athlete in one family, and what it rests on.
 *
 * @param climb stages and decision days
 * @param stays one for each stage, in order
 */
public record PlannedClimb(Climb climb, List<StayForecast> stays) {
  /** Takes a copy. */
  public PlannedClimb {
    stays = List.copyOf(stays);
  }

  /** Both branches of each decision, in order. */
  public List<Fork> forks() {
    return stays.stream()
        .filter(s -> s.decision() != null)
        .map(s -> new Fork(climb.family(), Objects.requireNonNull(s.decision()), s.chanceNext(), s.pace().stays(), s.pace().ownStays()))
        .toList();
  }
}

package boundwright.meet;

import boundwright.approach.aim.AimPolicy;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.approach.aim.Rival;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a rival's mark means for an athlete's next attempt.
 *
 * @param rival as on the list
 * @param needed_m shortest mark that stands ahead of the rival as the marks are [m]; null when the athlete is ahead
 * @param next where to aim, and the chance to be ahead in the end; null without an attempt left. A mark level with the
 *     rival's counts as behind in the chance, since the second best decides it
 */
public record RivalMeaning(Rival rival, @Nullable Double needed_m, AimPolicy.@Nullable Advice next) {
  /**
   * For every rival, best placed first.
   *
   * @param form the athlete's
   * @param rivalSd_m spread of a rival's marks [m]
   * @param rivalFouls foul chance of a rival's attempt, 0 to 1
   * @param unknownMean_m mean mark of a rival who has none yet [m]
   */
  public static List<RivalMeaning> of(
      Meet meet, String athlete, JumpForm form, double rivalSd_m, double rivalFouls, double unknownMean_m) {
    return of(meet, athlete, form, rivalSd_m, rivalFouls, unknownMean_m, meet.draw());
  }

  /**
   * The same for some rivals only.
   *
   * @param which as on the list
   */
  public static List<RivalMeaning> of(
      Meet meet, String athlete, JumpForm form, double rivalSd_m, double rivalFouls, double unknownMean_m, List<String> which) {
    int left = meet.attemptsLeft(athlete);
    List<Rival> rivals =
        meet.rivals(athlete, rivalSd_m, rivalFouls, unknownMean_m).stream().filter(r -> which.contains(r.name())).toList();
    List<RivalMeaning> out = new ArrayList<>();
    Double best = null;
    for (Placing p : meet.placings()) {
      if (p.athlete().equals(athlete)) {
        best = p.best_m();
      }
    }
    for (Placing p : meet.placings()) {
      for (Rival r : rivals) {
        if (r.name().equals(p.athlete())) {
          AimPolicy.Advice next = left == 0 ? null : AimPolicy.of(form, Goal.Place.ahead(r), left).advise(left, best);
          out.add(new RivalMeaning(r, meet.neededAhead(athlete, r.name()), next));
        }
      }
    }
    return List.copyOf(out);
  }
}

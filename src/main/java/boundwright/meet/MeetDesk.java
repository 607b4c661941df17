package boundwright.meet;

import boundwright.approach.aim.AimAnswer;
import boundwright.approach.aim.AimDesk;
import boundwright.approach.aim.AimPlan;
import boundwright.approach.aim.AimPolicy;
import boundwright.approach.aim.AimSettings;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.approach.aim.Rival;
import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** Keeps a meet as it goes, and says how it stands and what the next attempt of an athlete is for. */
public final class MeetDesk {
  /** Rivals on either side of the athlete in the placings whose marks are explained. */
  public static final int NEAREST = 3;
  private static final double NINE_IN_TEN = 0.9;
  private static final double EVEN = 0.5;

  private final MeetRepository meets;
  private final AimDesk aims;

  /** Works on these. */
  public MeetDesk(MeetRepository meets, AimDesk aims) {
    this.meets = meets;
    this.aims = aims;
  }

  /**
   * How a meet stands.
   *
   * @throws RefusedException if it is not there
   */
  public MeetNow now(long meetId) {
    return now(
        meets.byId(meetId)
            .orElseThrow(() -> new RefusedException("Meet number " + meetId + " is not in the store (any more). Load the list of meets again.")));
  }

  /** How a meet stands. */
  public MeetNow now(MeetSheet sheet) {
    if (sheet.entrants().isEmpty()) {
      return new MeetNow(sheet, null, List.of(), null, List.of(), null);
    }
    Meet meet = sheet.meet();
    OptionalInt now = meet.roundNow();
    if (now.isEmpty()) {
      return new MeetNow(sheet, meet, meet.placings(), null, List.of(), null);
    }
    int round = now.getAsInt();
    return new MeetNow(sheet, meet, meet.placings(), round, meet.order(round), meet.next(round).orElseThrow());
  }

  /**
   * Keeps an attempt and says how the meet stands then.
   *
   * @param attempt its athlete is replaced by the entrant's name
   */
  public MeetNow enter(long meetId, long entrantId, Attempt attempt, String note) {
    meets.add(meetId, entrantId, attempt, note);
    return now(meetId);
  }

  /** Takes the attempt back that was entered last, if there is one, and says how the meet stands then. */
  public MeetNow undo(long meetId) {
    meets.undo(meetId);
    return now(meetId);
  }

  /**
   * What an athlete's next attempt is for: while the first rounds last and not all go on, a place among those who do; then
   * the longest best. In a combined event it is for the most points, and no mark is worth nothing.
   *
   * @throws RefusedException if the athlete is not on the list
   */
  public MeetAim aim(MeetSheet sheet, Athlete athlete) {
    String name =
        sheet.entrantOf(athlete.id())
            .orElseThrow(() -> new RefusedException(athlete.name() + " is not on the list of " + sheet.name() + ". Add the athlete to it first."))
            .name();
    Meet meet = sheet.meet();
    int left = meet.attemptsLeft(name);
    Double best = best(meet, name);
    Event event = sheet.event();
    AimAnswer answer = aims.answer(athlete, event, null, Math.max(1, left));
    AimPlan plan = answer.plan();
    if (left == 0 || plan == null) {
      String why = left == 0 ? name + " has no attempt left in this meet." : answer.words(LengthUnit.METRES);
      return new MeetAim(name, left, best, "", null, null, null, null, List.of(), answer, why);
    }
    JumpForm form = plan.form();
    Combined part = meet.rules().combined();
    if (part != null) {
      return combined(meet, name, left, best, part, form, answer);
    }
    AimSettings s = meets.settings().aim();
    List<Rival> rivals = meet.rivals(name, s.rivalSd_m(), s.rivalFouls(), form.effectiveMean_m());
    Goal.Place place = cutAhead(meet, name, left) ? new Goal.Place(meet.rules().finalists(), rivals) : null;
    Goal goal = place == null ? plan.goal() : place;
    AimPolicy.Advice advice = AimPolicy.of(form, goal, left).advise(left, best);
    String purpose = place == null ? "the longest best" : "a place among the " + meet.rules().finalists() + " who jump on";
    if (place != null && !advice.worthwhile()) {
      // nothing is lost by jumping for distance; with a safe place the later rounds are to come as well
      boolean safe = advice.worth() > EVEN;
      int toCome = safe ? left + meet.rules().rounds() - meet.rules().firstRounds() : left;
      purpose = "the longest best: the place is " + (safe ? "safe" : "out of reach");
      advice = AimPolicy.of(form, plan.goal(), toCome).advise(toCome, best);
    }
    double shift = advice.aim_m() - answer.board().mean_m().p50();
    return new MeetAim(
        name,
        left,
        best,
        purpose,
        advice,
        shift,
        shift - lastShift(meet, name),
        place == null ? null : needed(place),
        RivalMeaning.of(meet, name, form, s.rivalSd_m(), s.rivalFouls(), form.effectiveMean_m(), nearest(meet, name)),
        answer,
        null);
  }

  private static MeetAim combined(Meet meet, String name, int left, @Nullable Double best, Combined part, JumpForm form, AimAnswer answer) {
    AimPolicy.Advice advice = AimPolicy.of(form, new Goal.Points(part.table()), left).advise(left, best);
    double shift = advice.aim_m() - answer.board().mean_m().p50();
    return new MeetAim(
        name, left, best, "the most points of the " + part.table().label(), advice, shift, shift - lastShift(meet, name), null, List.of(), answer, null);
  }

  /** Whether these attempts still decide who jumps on. */
  private static boolean cutAhead(Meet meet, String name, int left) {
    int used = 0;
    for (int r = 1; r <= meet.rules().firstRounds(); r++) {
      used += meet.attempt(name, r) == null ? 0 : 1;
    }
    return meet.hasCut() && used + left == meet.rules().firstRounds();
  }

  private static @Nullable Double needed(Goal.Place place) {
    try {
      return place.needed_m(NINE_IN_TEN);
    } catch (RefusedException noMarkDoes) {
      return null;
    }
  }

  private static @Nullable Double best(Meet meet, String name) {
    return meet.placings().stream().filter(p -> p.athlete().equals(name)).findFirst().map(Placing::best_m).orElse(null);
  }

  private static double lastShift(Meet meet, String name) {
    double shift = 0;
    int round = 0;
    for (Attempt a : meet.attempts()) {
      if (a.athlete().equals(name) && a.round() > round && a.result() != Attempt.Result.PASS) {
        round = a.round();
        shift = a.startShift_m();
      }
    }
    return shift;
  }

  /** Those next to the athlete in the placings. */
  private static List<String> nearest(Meet meet, String name) {
    List<String> all = meet.placings().stream().map(Placing::athlete).toList();
    int at = all.indexOf(name);
    List<String> out = new ArrayList<>(all.subList(Math.max(0, at - NEAREST), Math.min(all.size(), at + NEAREST + 1)));
    out.remove(name);
    return out;
  }
}

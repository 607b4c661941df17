package boundwright.load;

import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LegLoad;
import boundwright.load.account.LoadScale;
import boundwright.load.account.OwnWeeks;
import boundwright.load.account.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * What the rules about contacts look at in one day: a sum that grows with everything that is added.
 *
 * @param jumps jump contacts of both legs
 * @param units standing-bound contacts for each power of {@link #powers}
 * @param withoutMeet the same without jumps in a meet and run-throughs
 * @param hard whether the legs need the full spacing after it
 * @param onlyMeet whether it was jumping in a meet and nothing else
 * @param empty whether the legs did nothing
 */
record DaySum(int jumps, List<OwnWeeks.Legs> units, List<OwnWeeks.Legs> withoutMeet, boolean hard, boolean onlyMeet, boolean empty) {
  /** The scale's own power first, then those between which the answer is looked at again. */
  static List<Double> powers(LoadScale scale) {
    List<Double> out = new ArrayList<>();
    out.add(scale.power());
    for (double m = LoadScale.LEAST_POWER; m <= LoadScale.MOST_POWER; m++) {
      out.add(m);
    }
    return out;
  }

  static DaySum of(DayLoad day, ContactWeights weights, GuardLimits limits) {
    DayLoad training = new DayLoad(day.date(), day.work().stream().filter(w -> !meet(w)).toList(), day.other());
    List<Double> powers = powers(weights.scale());
    List<OwnWeeks.Legs> units = weights.of(day, powers).stream().map(DaySum::legs).toList();
    List<OwnWeeks.Legs> without = weights.of(training, powers).stream().map(DaySum::legs).toList();
    return new DaySum(
        day.contacts(), units, without, day.hard(limits.hardContacts(), limits.hardSteps()), day.onlyMeet(), day.isEmpty());
  }

  private static boolean meet(Work w) {
    return w.kind() == Work.Kind.MEET_JUMP || w.kind() == Work.Kind.RUN_THROUGH;
  }

  private static OwnWeeks.Legs legs(LegLoad load) {
    return new OwnWeeks.Legs(load.rightUnits(), load.leftUnits());
  }

  /** With so many alternate bounds more, begun on the right, from so many steps. */
  DaySum plus(int contacts, int steps, ContactWeights weights, GuardLimits limits) {
    if (contacts == 0) {
      return this;
    }
    int onRight = (contacts + 1) / 2;
    int onLeft = contacts / 2;
    List<Double> powers = powers(weights.scale());
    List<OwnWeeks.Legs> more = new ArrayList<>();
    List<OwnWeeks.Legs> moreTraining = new ArrayList<>();
    for (int i = 0; i < powers.size(); i++) {
      double each = weights.bound(steps, powers.get(i));
      double right = each * onRight;
      double left = each * onLeft;
      more.add(new OwnWeeks.Legs(units.get(i).right() + right, units.get(i).left() + left));
      moreTraining.add(new OwnWeeks.Legs(withoutMeet.get(i).right() + right, withoutMeet.get(i).left() + left));
    }
    int sum = jumps + contacts;
    return new DaySum(sum, more, moreTraining, hard || sum >= limits.hardContacts() || steps >= limits.hardSteps(), false, false);
  }
}

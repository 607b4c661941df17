package boundwright.season.conflict;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds, in what cannot hold together, a part that cannot either while every smaller part of it can: divided in halves by QuickXplain
 * (Junker 2004, AAAI; memory, high), then each member of what is left taken out once. A check that is undecided is never read as
 * feasible: what is left out was shown not to be needed, and what stays without a feasible check is counted.
 */
final class Irreducible<T> {
  private final Check<T> check;
  private int undecided;

  Irreducible(Check<T> check) {
    this.check = check;
  }

  /**
   * What clashes.
   *
   * @param members in the order in which they are found in a list
   * @param unproven how many members could not be shown to be needed, because a check without them was undecided; 0 if irreducible
   */
  record Core<T>(List<T> members, int unproven) {}

  /**
   * A part that clashes.
   *
   * @param all of which {@code check} says that they are infeasible
   */
  Core<T> of(List<T> all) {
    List<T> core = all.size() < 2 ? all : explain(List.of(), false, all);
    List<T> kept = new ArrayList<>(core);
    undecided = 0;
    for (T one : core) {
      List<T> rest = new ArrayList<>(kept);
      rest.remove(one);
      switch (check.of(rest)) {
        case INFEASIBLE -> kept = rest;
        case UNDECIDED -> undecided++;
        case FEASIBLE -> { }
      }
    }
    return new Core<>(List.copyOf(kept), undecided);
  }

  private List<T> explain(List<T> background, boolean added, List<T> rest) {
    if (added && check.of(background) == Answer.INFEASIBLE) {
      return List.of();
    }
    if (rest.size() == 1) {
      return rest;
    }
    int half = rest.size() / 2;
    List<T> first = rest.subList(0, half);
    List<T> second = rest.subList(half, rest.size());
    List<T> ofSecond = explain(joined(background, first), true, second);
    List<T> ofFirst = explain(joined(background, ofSecond), !ofSecond.isEmpty(), first);
    return joined(ofFirst, ofSecond);
  }

  private static <T> List<T> joined(List<T> a, List<T> b) {
    List<T> out = new ArrayList<>(a);
    out.addAll(b);
    return out;
  }
}

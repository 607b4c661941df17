package boundwright.season.conflict;

import boundwright.season.year.Choice;
import boundwright.season.year.YearProblem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The open days of a squad: what may be done on each, what is alike to every rule taken once. A day of an athlete is a cell. */
final class Field {
  final List<YearProblem> problems;
  /** Most at once, by place. */
  final int[] room;

  final int days;
  /** First day that is not over. */
  final int open;

  private final Choice[][] options;

  /** What the rules see of a choice. */
  private record Seen(int right, int left, boolean hard, boolean meet, int venue, int kind) {}

  /**
   * Of a squad.
   *
   * @param problems whose choices leave out no day for its being away
   * @param room most at once, by place
   * @param open first day that is not over, 0 the season's first; a meet from there on can be left out
   */
  Field(List<YearProblem> problems, int[] room, int open) {
    this.problems = List.copyOf(problems);
    this.room = room.clone();
    this.days = problems.get(0).days();
    this.open = open;
    this.options = new Choice[problems.size() * days][];
    for (int a = 0; a < problems.size(); a++) {
      for (int t = 0; t < days; t++) {
        options[a * days + t] = once(problems.get(a).choices(t), t >= open);
      }
    }
  }

  private static Choice[] once(List<Choice> all, boolean open) {
    Set<Seen> seen = new HashSet<>();
    List<Choice> out = new ArrayList<>();
    if (open && all.get(0).meet()) {
      out.add(Choice.REST);
    }
    for (Choice c : all) {
      if (seen.add(new Seen(c.right(), c.left(), c.hard(), c.meet(), c.venue(), c.session() == null ? -1 : c.session().kind().at()))) {
        out.add(c);
      }
    }
    out.sort(Comparator.comparingInt((Choice c) -> c.rest() ? 0 : 1).thenComparingInt(c -> c.right() + c.left()));
    return out.toArray(Choice[]::new);
  }

  int cell(int athlete, int day) {
    return athlete * days + day;
  }

  int athlete(int cell) {
    return cell / days;
  }

  int day(int cell) {
    return cell % days;
  }

  /** What may be done, rest first unless there is no rest, then by load. */
  Choice[] options(int cell) {
    return options[cell];
  }
}

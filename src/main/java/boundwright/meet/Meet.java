package boundwright.meet;

import boundwright.approach.aim.Goal;
import boundwright.approach.aim.Rival;
import boundwright.approach.board.BoardGaps;
import boundwright.jump.CombinedTable;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A competition in one event as it stands: who jumps in which order, the attempts so far, ranks and ties by the rules
 * (read: ties by the second best, then the third; in a combined event by the points of the best alone), who goes on after the first rounds, and what each rival's mark means.
 * Immutable; {@link #with} takes one more attempt.
 */
public final class Meet {
  private final MeetRules rules;
  private final List<String> draw;
  private final List<Attempt> attempts;

  private Meet(MeetRules rules, List<String> draw, List<Attempt> attempts) {
    this.rules = rules;
    this.draw = draw;
    this.attempts = attempts;
  }

  /**
   * A meet before its first attempt.
   *
   * @param draw athletes in the order drawn, 1 to 60, each once
   */
  public static Meet of(MeetRules rules, List<String> draw) {
    Limits.count("Athletes", draw.size(), 1, 60, "Enter the list.");
    Set<String> seen = new HashSet<>();
    for (String name : draw) {
      if (name.isBlank() || !seen.add(name)) {
        throw new RefusedException("The list names \"" + name + "\" " + (name.isBlank() ? "without a name" : "twice") + ". Each athlete stands in it once.");
      }
    }
    return new Meet(rules, List.copyOf(draw), List.of());
  }

  /**
   * A meet as it was kept: nothing is refused for what an earlier attempt has become since, so that every entry can be seen
   * and mended. Of one athlete and round the later attempt counts.
   *
   * @param draw as in {@link #of}
   * @param attempts in the order entered, each of an athlete in the draw
   */
  static Meet asKept(MeetRules rules, List<String> draw, List<Attempt> attempts) {
    Meet empty = of(rules, draw);
    List<Attempt> all = new ArrayList<>();
    for (Attempt a : attempts) {
      all.removeIf(o -> o.round() == a.round() && o.athlete().equals(a.athlete()));
      all.add(a);
    }
    return new Meet(empty.rules, empty.draw, List.copyOf(all));
  }

  /**
   * The meet after one more attempt. An attempt already there is replaced, so a slip can be mended.
   *
   * @throws RefusedException for another event, an unknown athlete, a round that is not jumped, or one who did not go on
   */
  public Meet with(Attempt a) {
    if (a.event() != rules.event()) {
      throw new RefusedException("An attempt at the " + a.event().label() + " does not belong to a meet in the " + rules.event().label() + ". Choose the other meet.");
    }
    if (!draw.contains(a.athlete())) {
      throw new RefusedException("\"" + a.athlete() + "\" is not in this meet. Add the athlete to the list first.");
    }
    Limits.count("A round", a.round(), 1, rules.rounds(), "This meet has so many.");
    if (a.round() > rules.firstRounds() && !goesOn().contains(a.athlete())) {
      throw new RefusedException(
          a.athlete() + " did not go on after round " + rules.firstRounds() + ", so there is no round " + a.round() + ". Check the earlier marks.");
    }
    List<Attempt> next = new ArrayList<>(attempts);
    next.removeIf(o -> o.round() == a.round() && o.athlete().equals(a.athlete()));
    next.add(a);
    return new Meet(rules, draw, List.copyOf(next));
  }

  /** The meet without an attempt, if it was there. */
  public Meet without(String athlete, int round) {
    return new Meet(
        rules, draw, attempts.stream().filter(o -> o.round() != round || !o.athlete().equals(athlete)).toList());
  }

  /** The rules. */
  public MeetRules rules() {
    return rules;
  }

  /** The athletes in the order drawn. */
  public List<String> draw() {
    return draw;
  }

  /** All attempts in the order entered. */
  public List<Attempt> attempts() {
    return attempts;
  }

  /** An athlete's attempt in a round, or null. */
  public @Nullable Attempt attempt(String athlete, int round) {
    return attempts.stream().filter(a -> a.round() == round && a.athlete().equals(athlete)).findFirst().orElse(null);
  }

  /** Where everybody stands, best first; level athletes in the order drawn; those without a mark last. */
  public List<Placing> placings() {
    return placings(rules.rounds());
  }

  /** The same after a round, later attempts left out. */
  public List<Placing> placings(int afterRound) {
    List<Scored> all = new ArrayList<>();
    for (String name : draw) {
      all.add(scored(name, afterRound));
    }
    List<Scored> sorted = new ArrayList<>(all);
    Comparator<Scored> better = better();
    sorted.sort(better);
    List<Placing> out = new ArrayList<>();
    int rank = 0;
    for (int i = 0; i < sorted.size(); i++) {
      Scored s = sorted.get(i);
      if (i == 0 || better.compare(sorted.get(i - 1), s) != 0) {
        rank = i + 1;
      }
      out.add(
          new Placing(
              s.name,
              s.steps.isEmpty() ? null : Integer.valueOf(rank),
              s.marks.isEmpty() ? null : s.marks.get(0),
              s.marks,
              s.legal));
    }
    return List.copyOf(out);
  }

  private Scored scored(String name, int afterRound) {
    List<Long> steps = new ArrayList<>();
    Double legal = null;
    for (Attempt a : attempts) {
      Double d = a.distance_m();
      if (a.round() <= afterRound && d != null && a.athlete().equals(name)) {
        steps.add(rules.measure().steps(d));
        Double w = a.wind();
        double down = rules.measure().down(d);
        if (w != null && Wind.legal(w) && (legal == null || down > legal)) {
          legal = down;
        }
      }
    }
    steps.sort(Comparator.reverseOrder());
    List<Double> marks = steps.stream().map(rules.measure()::metres).toList();
    return new Scored(name, steps, marks, legal);
  }

  /** Who is ahead: by all marks, or by the points of the best. */
  private Comparator<Scored> better() {
    Combined part = rules.combined();
    return part == null ? Scored.BY_MARKS : Comparator.comparingInt((Scored s) -> -points(part.table(), s));
  }

  /** Without a mark they are behind one that is worth nothing. */
  private static int points(CombinedTable table, Scored s) {
    return s.marks.isEmpty() ? -1 : table.points(s.marks.get(0));
  }

  private record Scored(String name, List<Long> steps, List<Double> marks, @Nullable Double legal) {
    /** Best first, then second best and so on; a missing mark is behind every mark. */
    static final Comparator<Scored> BY_MARKS =
        (a, b) -> {
          for (int i = 0; i < Math.max(a.steps.size(), b.steps.size()); i++) {
            long x = i < a.steps.size() ? a.steps.get(i) : -1;
            long y = i < b.steps.size() ? b.steps.get(i) : -1;
            if (x != y) {
              return Long.compare(y, x);
            }
          }
          return 0;
        };
  }

  /** Whether there is a cut: more athletes than finalists, and rounds after the first ones. */
  public boolean hasCut() {
    return draw.size() > rules.finalists() && rules.rounds() > rules.firstRounds();
  }

  /**
   * Who jumps on after the first rounds as the marks stand, in the order drawn: everybody without a cut; else the best,
   * and all who are level with the last of them in every mark. Without a valid mark nobody passes a cut.
   */
  public List<String> goesOn() {
    if (!hasCut()) {
      return draw;
    }
    Set<String> in = new HashSet<>();
    for (Placing p : placings(rules.firstRounds())) {
      Integer rank = p.rank();
      if (rank != null && rank <= rules.finalists()) {
        in.add(p.athlete());
      }
    }
    return draw.stream().filter(in::contains).toList();
  }

  /** The first round in which somebody who is still in has no attempt; empty when all are entered. */
  public OptionalInt roundNow() {
    return IntStream.rangeClosed(1, rules.rounds()).filter(round -> next(round).isPresent()).findFirst();
  }

  /** Who is next in a round, 1 to {@link MeetRules#rounds()}: the first in its order without an attempt. */
  public Optional<String> next(int round) {
    return order(round).stream().filter(name -> attempt(name, round) == null).findFirst();
  }

  /** In what order a round is jumped as the marks stand, 1 to {@link MeetRules#rounds()}. */
  public List<String> order(int round) {
    Limits.count("A round", round, 1, rules.rounds(), "This meet has so many.");
    if (round <= rules.firstRounds()) {
      return draw;
    }
    List<String> in = goesOn();
    int ranked =
        switch (rules.order()) {
          case AS_DRAWN -> 0;
          case WORST_FIRST_ONCE -> rules.firstRounds();
          case WORST_FIRST_TWICE -> round == rules.rounds() ? round - 1 : rules.firstRounds();
          case WORST_FIRST_ALWAYS -> round - 1;
        };
    if (ranked == 0) {
      return in;
    }
    // those without a mark come first; they, and those who are level, keep the order of the draw among themselves
    List<Placing> placed = placings(ranked);
    List<String> out = new ArrayList<>(in);
    out.sort(Comparator.comparingInt((String n) -> -rankOf(placed, n)));
    return List.copyOf(out);
  }

  private static int rankOf(List<Placing> placed, String athlete) {
    for (Placing p : placed) {
      if (p.athlete().equals(athlete)) {
        Integer rank = p.rank();
        return rank == null ? Integer.MAX_VALUE : rank;
      }
    }
    return Integer.MAX_VALUE;
  }

  /** Attempts an athlete still has: until the cut while the first rounds last, until the end after it; 0 when out. */
  public int attemptsLeft(String athlete) {
    boolean later = attempts.stream().anyMatch(a -> a.round() > rules.firstRounds());
    boolean cutDone = hasCut() && (later || firstRoundsDone());
    int last = hasCut() && !cutDone ? rules.firstRounds() : rules.rounds();
    if (cutDone && !goesOn().contains(athlete)) {
      return 0;
    }
    int used = 0;
    for (int r = 1; r <= last; r++) {
      used += attempt(athlete, r) != null ? 1 : 0;
    }
    return last - used;
  }

  private boolean firstRoundsDone() {
    for (String name : draw) {
      for (int r = 1; r <= rules.firstRounds(); r++) {
        if (attempt(name, r) == null) {
          return false;
        }
      }
    }
    return true;
  }

  /**
   * The shortest mark that would stand ahead of a rival's marks as they are [m]: one step of the measure beyond the
   * rival's best, or level with it when the athlete's second best (and so on) is the longer.
   *
   * @return null when the athlete stands ahead already
   * @throws RefusedException in a combined event, where what counts is the total of all its events
   */
  public @Nullable Double neededAhead(String athlete, String rival) {
    if (rules.combined() != null) {
      throw new RefusedException("In a combined event the total of all its events decides: ask for the points, not for a rival's mark.");
    }
    Scored own = scored(athlete, rules.rounds());
    Scored other = scored(rival, rules.rounds());
    if (Scored.BY_MARKS.compare(own, other) < 0) {
      return null;
    }
    long level = other.steps.isEmpty() ? rules.measure().steps(rules.event().least_m()) : other.steps.get(0);
    List<Long> with = new ArrayList<>(own.steps);
    with.add(level);
    with.sort(Comparator.reverseOrder());
    boolean levelWins = Scored.BY_MARKS.compare(new Scored(athlete, with, own.marks, null), other) < 0;
    return rules.measure().metres(levelWins ? level : level + 1);
  }

  /**
   * The rivals of an athlete for {@link Goal.Place}, with what they may still jump.
   *
   * @param sd_m spread of each rival's marks [m], used for attempts to come
   * @param foulChance of each rival's attempts, 0 to 1
   * @param unknownMean_m mean mark of a rival who has none yet [m]
   */
  public List<Rival> rivals(String athlete, double sd_m, double foulChance, double unknownMean_m) {
    List<Rival> out = new ArrayList<>();
    for (String name : draw) {
      if (!name.equals(athlete)) {
        List<Double> marks = scored(name, rules.rounds()).marks;
        double mean = marks.stream().mapToDouble(Double::doubleValue).average().orElse(unknownMean_m);
        out.add(new Rival(name, marks.isEmpty() ? null : marks.get(0), attemptsLeft(name), mean, sd_m, foulChance));
      }
    }
    return List.copyOf(out);
  }

  /** An athlete's board log of this meet, each gap corrected to the planned start mark; passes are left out. */
  public BoardGaps boardGaps(String athlete) {
    List<Double> measured = new ArrayList<>();
    List<Double> fouls = new ArrayList<>();
    for (Attempt a : attempts) {
      if (a.athlete().equals(athlete) && a.result() != Attempt.Result.PASS) {
        Double gap = a.gap_m();
        if (gap != null) {
          measured.add(gap - a.startShift_m());
        } else if (a.result() == Attempt.Result.FOUL) {
          fouls.add(-a.startShift_m());
        }
      }
    }
    return new BoardGaps(measured, fouls);
  }
}

package boundwright.season.solve;

import boundwright.season.SessionKind;
import boundwright.season.year.Choice;
import boundwright.season.year.Level;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * Days of one athlete chosen anew from left to right along a beam, within what the others leave of the places. Lines are compared by what
 * their past costs for sure and, in a week that is not over, by the least that it can still cost; lines that stand alike are told apart
 * by the best of them alone, so that the beam stays wide where it matters.
 */
public final class Beam {
  private static final int LEVELS = Level.values().length;
  /** One more than the levels: how far the week is from an even share, so that lines that are equal so far are ranked. */
  private static final int KEY = LEVELS + 1;
  /** Loads of four weeks that count as alike [1/100 standing-bound contact]. */
  private static final long STOCK = 3000;

  /** Athletes of a squad for which a beam has its usual width. */
  private static final int SQUAD = 24;

  private static final SessionKind[] KINDS = SessionKind.values();

  private final Joint joint;
  private final int width;
  private final RandomGenerator random;
  private final double noise;
  private final int blur;

  /**
   * A beam.
   *
   * @param width lines kept after each day
   * @param noise how far the even share is shaken [standing-bound contacts], 0 for none: another search each time
   */
  public Beam(Joint joint, int width, RandomGenerator random, double noise) {
    this(joint, width, random, noise, 1);
  }

  /** The width for a squad: the usual one from {@value #SQUAD} athletes on; wider for fewer, who have the time of the others. */
  static int width(int usual, int most, int athletes) {
    return Math.min(most, Math.max(usual, usual * SQUAD / athletes));
  }

  /**
   * A beam that looks less closely at the load on its way, so that what is below it in the order is tried too.
   *
   * @param blur standing-bound contacts off that count as one, at least 1
   */
  Beam(Joint joint, int width, RandomGenerator random, double noise, int blur) {
    this.joint = joint;
    this.width = width;
    this.random = random;
    this.noise = noise;
    this.blur = blur;
  }

  /**
   * A line of the beam.
   *
   * @param places days at two places that it adds, and a million for each place that is full
   */
  private record Line(YearLine line, long places) {}

  private static final class Candidate {
    final Line from;
    final Choice choice;
    final long[] key;
    /** Load of four weeks, coarsely: what later weeks may grow from. */
    final long stock;

    Candidate(Line from, Choice choice, long[] key, long stock) {
      this.from = from;
      this.choice = choice;
      this.key = key;
      this.stock = stock;
    }
  }

  /**
   * The best line found for an athlete with new days {@code from} to {@code to}; the others are left as they are.
   *
   * @return null if what is there now is better
   */
  public @Nullable YearLine search(int athlete, int from, int to) {
    return search(athlete, from, to, false);
  }

  /** The same, but changed days count before all else but refusals. */
  public @Nullable YearLine fewChanges(int athlete, int from, int to) {
    return search(athlete, from, to, true);
  }

  private @Nullable YearLine search(int athlete, int from, int to, boolean few) {
    YearLine now = joint.line(athlete);
    YearProblem p = now.problem();
    YearLine start = now.copy();
    for (int t = from; t <= to; t++) {
      if (p.choices(t).size() > 1) {
        start.choose(t, p.choices(t).get(0));
      }
    }
    List<Line> beam = List.of(new Line(start, 0));
    Week week = new Week(p);
    for (int t = from; t <= to; t++) {
      if (p.choices(t).size() > 1) {
        beam = step(athlete, beam, t, to, week, few);
      }
    }
    Line best = null;
    long[] bestScore = whole(now, placesOf(athlete, now, from, to));
    if (few) {
      changesFirst(bestScore);
    }
    for (Line l : beam) {
      long[] score = whole(l.line(), l.places());
      if (few) {
        changesFirst(score);
      }
      if (Joint.compare(score, bestScore) < 0) {
        bestScore = score;
        best = l;
      }
    }
    return best == null ? null : best.line();
  }

  private long placesOf(int athlete, YearLine line, int from, int to) {
    long sum = 0;
    for (int t = from; t <= to; t++) {
      sum += joint.placeCost(athlete, t, line.chosen(t).venue());
      sum += joint.fits(athlete, t, line.chosen(t).venue()) ? 0 : 1_000_000;
    }
    return sum;
  }

  private static long[] whole(YearLine line, long places) {
    long[] out = line.total().clone();
    out[Level.REFUSED.at()] += places / 1_000_000;
    out[Level.PLACES.at()] += places % 1_000_000;
    return out;
  }

  private List<Line> step(int athlete, List<Line> beam, int t, int to, Week week, boolean few) {
    YearProblem p = beam.get(0).line().problem();
    List<Choice> allowed = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    for (Choice c : p.choices(t)) {
      if (joint.fits(athlete, t, c.venue())) {
        allowed.add(c);
        places.add(joint.placeCost(athlete, t, c.venue()));
      }
    }
    boolean lastOfWeek = week.last(t, to);
    Map<Long, Candidate> best = new HashMap<>();
    long[] key = new long[KEY];
    for (Line l : beam) {
      for (int i = 0; i < allowed.size(); i++) {
        Choice c = allowed.get(i);
        if (few ? p.sensible(t, c) : asked(l.line(), t, c)) {
          key(l, t, c, places.get(i), lastOfWeek, week, key);
          if (few) {
            changesFirst(key);
          }
          long sign = sign(l.line(), t, c);
          Candidate known = best.get(sign);
          if (known == null || Arrays.compare(key, known.key) < 0) {
            best.put(sign, new Candidate(l, c, key.clone(), (l.line().month(t) + (long) c.right() + c.left()) / STOCK));
          }
        }
      }
    }
    return survivors(athlete, best.values(), t);
  }

  private static void changesFirst(long[] key) {
    long changes = key[Level.CHANGES.at()];
    System.arraycopy(key, 1, key, 2, Level.CHANGES.at() - 1);
    key[1] = changes;
  }

  /** A session that nobody asks for in this week is not looked at: each would cost a wish and help none. */
  private static boolean asked(YearLine y, int t, Choice c) {
    if (c.session() == null || y.problem().wished(t)) {
      return true;
    }
    SessionKind kind = c.session().kind();
    return y.sessions(t / 7, kind) < y.problem().wantedSessions(t / 7, kind);
  }

  private List<Line> survivors(int athlete, Collection<Candidate> all, int t) {
    List<Candidate> sorted = new ArrayList<>(all);
    sorted.sort((a, b) -> Arrays.compare(a.key, b.key));
    List<Line> out = new ArrayList<>();
    for (Candidate c : kept(sorted)) {
      YearLine copy = c.from.line().copy();
      copy.choose(t, c.choice);
      out.add(new Line(copy, c.from.places() + joint.placeCost(athlete, t, c.choice.venue())));
    }
    return out;
  }

  /** The best, and of the others those with another load of four weeks behind them: a beam of lines that are all alike is stuck together. */
  private List<Candidate> kept(List<Candidate> sorted) {
    int best = Math.min(sorted.size(), width - width / 3);
    List<Candidate> out = new ArrayList<>(sorted.subList(0, best));
    Set<Long> stocks = new HashSet<>();
    out.forEach(c -> stocks.add(c.stock));
    List<Candidate> rest = new ArrayList<>();
    for (Candidate c : sorted.subList(best, sorted.size())) {
      if (out.size() < width && stocks.add(c.stock)) {
        out.add(c);
      } else {
        rest.add(c);
      }
    }
    out.addAll(rest.subList(0, Math.min(rest.size(), width - out.size())));
    return out;
  }

  /** Lines with the same sign stand alike: what they carry into the next days is nearly the same. */
  private static long sign(YearLine y, int t, Choice c) {
    int w = t / 7;
    long more = (long) c.right() + c.left();
    long h = Math.round((y.week(w) + more) / 1500.0);
    for (SessionKind k : KINDS) {
      h = 31 * h + y.sessions(w, k) + (c.session() != null && c.session().kind() == k ? 1 : 0);
    }
    h = 31 * h + (c.hard() ? 0 : Math.min(3, y.sinceHard(t)));
    h = 31 * h + y.sessionsBefore(t) + (c.rest() ? 0 : 1);
    h = 31 * h + Math.round((y.month(t) + more) / 6000.0);
    return h;
  }

  private void key(Line l, int t, Choice c, int places, boolean lastOfWeek, Week week, long[] key) {
    YearLine y = l.line();
    y.preview(t, c, key);
    key[Level.PLACES.at()] += places + l.places();
    int w = t / 7;
    long load = (long) y.week(w) + c.right() + c.left();
    long uneven = 0;
    if (lastOfWeek) {
      key[Level.UNEQUAL.at()] += Math.abs(y.surplus(w) + c.surplus());
    } else {
      uneven = Math.abs(load - week.even(w, t)) / 100;
    }
    key[Level.WISHES.at()] += week.leastWishes(y, w, t, c);
    key[Level.OFF.at()] += week.leastOff(w, t, load);
    key[Level.OFF.at()] /= blur;
    key[LEVELS] = uneven + (noise == 0 ? 0 : (long) (noise * random.nextDouble()));
  }

  /** What the rest of a week can still bring. */
  private static final class Week {
    private final YearProblem p;
    /** From the day after, within its week: days with a choice of each kind, days with any choice, most load [1/100 contact]. */
    private final int[][] kindDays;

    private final int[] openDays;
    private final long[] most;

    Week(YearProblem p) {
      this.p = p;
      int n = p.days();
      kindDays = new int[n][KINDS.length];
      openDays = new int[n];
      most = new long[n];
      for (int t = n - 2; t >= 0; t--) {
        if (t / 7 == (t + 1) / 7) {
          kindDays[t] = kindDays[t + 1].clone();
          boolean[] has = new boolean[KINDS.length];
          long load = 0;
          for (Choice c : p.choices(t + 1)) {
            if (c.session() != null) {
              has[c.session().kind().at()] = true;
              load = Math.max(load, (long) c.right() + c.left());
            }
          }
          for (int k = 0; k < has.length; k++) {
            kindDays[t][k] += has[k] ? 1 : 0;
          }
          boolean open = p.choices(t + 1).size() > 1;
          openDays[t] = openDays[t + 1] + (open ? 1 : 0);
          most[t] = most[t + 1] + (open ? load : 0);
        }
      }
    }

    boolean last(int t, int to) {
      return openDays[t] == 0 || t == to;
    }

    long leastWishes(YearLine y, int w, int t, Choice c) {
      long missing = 0;
      long byKind = 0;
      int all = 0;
      for (SessionKind k : KINDS) {
        if (k != SessionKind.MEET) {
          int n = y.sessions(w, k) + (c.session() != null && c.session().kind() == k ? 1 : 0);
          all += n;
          int need = Math.max(0, p.wantedSessions(w, k) - n);
          missing += need;
          byKind += Math.max(0, need - kindDays[t][k.at()]);
        }
      }
      return Math.max(byKind, missing - openDays[t]) + Math.max(0, all - p.wantedSessions(w));
    }

    long leastOff(int w, int t, long load) {
      long gap = p.wantedLoad(w) - load;
      return gap < 0 ? (50 - gap) / 100 : (Math.max(0, gap - most[t]) + 50) / 100;
    }

    /** The load that an even share of the week's open days would have brought by now. */
    long even(int w, int t) {
      int all = openDays[7 * w] + (p.choices(7 * w).size() > 1 ? 1 : 0);
      return all == 0 ? 0 : p.wantedLoad(w) * (long) (all - openDays[t]) / all;
    }
  }
}

package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.flight.Rep;
import boundwright.readiness.Evidence.Name;
import boundwright.readiness.Evidence.State;
import boundwright.readiness.GateAnswer.Decision;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.Function;

/**
 * Prints what the gate does over whole seasons of {@link SeasonAthlete}s: asked after each of 24 sessions, two a week, the
 * athlete staying on the approach whatever is answered.
 *
 * <p>Run: {@code bench/gate}, or {@code mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=target/cp && java -cp
 * target/test-classes:target/classes:$(cat target/cp) boundwright.readiness.GateSeasons
 * [athletes [part ...]]}
 */
public final class GateSeasons {
  /** Sessions in four weeks. */
  static final int FOUR_WEEKS = 8;

  private static final Source INVENTED = new Source("invented", "invented", "simulation", Standing.JUDGEMENT);
  private static final LoadAnswer CLEAR = new LoadAnswer(false, "allowed", INVENTED, false, "none", INVENTED);
  /** Drawn apart from the athlete, so that a season is the same whatever else is asked. */
  private static final long OTHER = 0x5DEECE66DL;

  private GateSeasons() {}

  /** In which session, counted from 1, something came for the first time; 0 where it never did. One entry an athlete. */
  static final class Sessions {
    private final int[] at;

    Sessions(int athletes) {
      at = new int[athletes];
    }

    void note(int athlete, int session, boolean now) {
      if (now && at[athlete] == 0) {
        at[athlete] = session + 1;
      }
    }

    /** Share of the athletes for whom it came in sessions {@code from} to {@code to}. */
    double share(int from, int to) {
      int n = 0;
      for (int s : at) {
        n += s >= from && s <= to ? 1 : 0;
      }
      return n / (double) at.length;
    }
  }

  /** What a group of athletes met: 'add two steps', 'go back two', and each thing that was asked, there and not there. */
  static final class Met {
    private final Sessions add;
    private final Sessions back;
    private final Map<Name, Sessions> there = new EnumMap<>(Name.class);
    private final Map<Name, Sessions> missing = new EnumMap<>(Name.class);

    private Met(int athletes) {
      add = new Sessions(athletes);
      back = new Sessions(athletes);
      for (Name n : Name.values()) {
        there.put(n, new Sessions(athletes));
        missing.put(n, new Sessions(athletes));
      }
    }

    private void note(int athlete, int session, GateAnswer answer) {
      add.note(athlete, session, answer.decision() == Decision.ADD_TWO_STEPS);
      back.note(athlete, session, answer.decision() == Decision.GO_BACK);
      for (Evidence e : answer.evidence()) {
        of(there, e.name()).note(athlete, session, e.state() == State.THERE);
        of(missing, e.name()).note(athlete, session, e.state() == State.NOT_THERE);
      }
    }

    private static Sessions of(Map<Name, Sessions> map, Name name) {
      return Objects.requireNonNull(map.get(name));
    }

    /** Share let up in sessions 1 to {@code sessions}. */
    double addedWithin(int sessions) {
      return add.share(1, sessions);
    }

    /** Share first told to go back in sessions {@code from} to {@code to}. */
    double toldBack(int from, int to) {
      return back.share(from, to);
    }

    /** Share for whom a thing was there for the first time in sessions 1 to {@code sessions}. */
    double thereWithin(Name name, int sessions) {
      return of(there, name).share(1, sessions);
    }

    /** Share for whom a thing was not there for the first time in sessions {@code from} to {@code to}. */
    double missing(Name name, int from, int to) {
      return of(missing, name).share(from, to);
    }
  }

  /**
   * Lets {@code athletes} of a kind go through a season.
   *
   * @param steps the approach
   * @param sessions asked for
   * @param painDays chance that a day is one of pain or of a load refused
   */
  static Met season(SeasonAthlete kind, int steps, int sessions, int athletes, double painDays, long seed) {
    Gate gate = new Gate(GateRules.DEFAULT);
    Met met = new Met(athletes);
    for (int a = 0; a < athletes; a++) {
      Random r = new Random(seed * 1_000_003 + a);
      Random other = new Random(OTHER + a);
      List<Rep> log = new ArrayList<>();
      for (int s = 0; s < sessions; s++) {
        log.addAll(kind.session(s, steps, r));
        LocalDate today = SeasonAthlete.day(s);
        LoadAnswer load = other.nextDouble() < painDays ? new LoadAnswer(true, "refused", INVENTED, true, "5", INVENTED) : CLEAR;
        GateAnswer answer = gate.answer(GateCase.of(log, DrillFamily.ALTERNATE, steps, 0, load, GateRules.DEFAULT, today));
        met.note(a, s, answer);
      }
    }
    return met;
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%5.1f %%", 100 * share);
  }

  private static void row(Object... cells) {
    StringBuilder out = new StringBuilder("|");
    for (Object c : cells) {
      out.append(' ').append(c).append(" |");
    }
    System.out.println(out);
  }

  /** Prints the tables: all, or the parts named after the number of athletes. */
  public static void main(String[] args) {
    int n = args.length > 0 ? Integer.parseInt(args[0]) : 2000;
    List<String> parts = args.length > 1 ? List.of(args).subList(1, args.length) : List.of("shares", "learners", "losses", "fading", "speed", "jointly");
    long seed = 12;
    System.out.println(n + " athletes a row, seed " + seed + ", two sessions a week, asked after each of 24; own output");
    for (String part : parts) {
      switch (part) {
        case "shares" -> shares(n, seed);
        case "learners" -> learners(n, seed);
        case "losses" -> losses(n, seed);
        case "fading" -> fading(n, seed);
        case "speed" -> speed(n, seed);
        case "jointly" -> jointly(n, seed);
        default -> System.out.println("No part is called '" + part + "': shares, learners, losses, fading, speed, jointly.");
      }
    }
  }

  private static void shares(int n, long seed) {
    System.out.println("\nClean reps alone, constant share (24 sessions of six | of twelve | with form of the day, SD .5 in log-odds); then with the least stay");
    row("share", "reps ever", "reps in 4 weeks", "of twelve ever", "form ever", "form in 4 weeks", "+ stay, from 4: in 4 weeks", "from 6: ever", "from 6: in 4 weeks", "told back in 12 weeks", "with form");
    for (int p = 50; p <= 100; p += 5) {
      SeasonAthlete kind = SeasonAthlete.of(p / 100.0);
      Met four = season(kind, 4, 24, n, 0, seed);
      Met six = season(kind, 6, 24, n, 0, seed);
      Met twelve = season(kind.withReps(12), 4, 24, n, 0, seed);
      Met form = season(kind.withForm(0.5), 4, 24, n, 0, seed);
      row(String.format(Locale.ROOT, "%.2f", p / 100.0), percent(four.thereWithin(Name.CLEAN, 24)), percent(four.thereWithin(Name.CLEAN, FOUR_WEEKS)),
          percent(twelve.thereWithin(Name.CLEAN, 24)), percent(form.thereWithin(Name.CLEAN, 24)), percent(form.thereWithin(Name.CLEAN, FOUR_WEEKS)),
          percent(four.addedWithin(FOUR_WEEKS)), percent(six.addedWithin(24)), percent(six.addedWithin(FOUR_WEEKS)),
          percent(four.toldBack(1, 24)), percent(form.toldBack(1, 24)));
    }
  }

  private static void learners(int n, long seed) {
    System.out.println("\nA learner from .60 to .95: let up within six sessions after .92 is reached, before it, told back at some time");
    row("learns in", "within 6 after", "before", "told back", "with form: within 6 after", "told back", "all faults load a leg: told back");
    for (int sessions : new int[] {8, 12, 18, 24}) {
      SeasonAthlete kind = SeasonAthlete.of(SeasonAthlete.learner(sessions));
      int at = 0;
      while (SeasonAthlete.learner(sessions).applyAsDouble(at) < 0.92 - 1e-9) {
        at++;
      }
      Met m = season(kind, 4, 32, n, 0, seed);
      Met form = season(kind.withForm(0.5), 4, 32, n, 0, seed);
      Met legs = season(kind.withLoading(1), 4, 32, n, 0, seed);
      row(sessions + " sessions", percent(m.addedWithin(at + 1 + 6)), percent(m.addedWithin(at)), percent(m.toldBack(1, 24)),
          percent(form.addedWithin(at + 1 + 6)), percent(form.toldBack(1, 24)), percent(legs.toldBack(1, 24)));
    }
  }

  private static void losses(int n, long seed) {
    System.out.println("\nA fall from .9 to .5: told back within 24 reps after it");
    row("good sessions before", "told back", "before the fall", "with form", "all faults load a leg");
    for (int before : new int[] {2, 4, 6, 8, 10, 12, 16}) {
      SeasonAthlete kind = SeasonAthlete.of(SeasonAthlete.fall(before));
      Function<SeasonAthlete, Met> run = k -> season(k, 4, before + 4, n, 0, seed);
      Met m = run.apply(kind);
      row(before, percent(m.toldBack(before + 1, before + 4)), percent(m.toldBack(1, before)),
          percent(run.apply(kind.withForm(0.5)).toldBack(before + 1, before + 4)), percent(run.apply(kind.withLoading(1)).toldBack(before + 1, before + 4)));
    }
  }

  private static void fading(int n, long seed) {
    System.out.println("\nA perfect athlete with measured lengths: let up within 4 weeks, held by fading when the least stay is over, or at some of 24 looks");
    row("change over ten reps", "SD of a landing", "let up in 4 weeks", "held in the 5th session", "held at some time");
    for (double change : new double[] {0, -0.03, -0.06, -0.10}) {
      for (double sd : new double[] {0.03, 0.04, 0.05}) {
        SeasonAthlete kind = SeasonAthlete.of(1.0).measured(2.29 * sd, change);
        Met m = season(kind, 4, 24, n, 0, seed);
        row(percent(change), percent(sd), percent(m.addedWithin(FOUR_WEEKS)), percent(1 - m.addedWithin(5)),
            percent(m.missing(Name.NO_FADING, 2, 24)));
      }
    }
  }

  private static void speed(int n, long seed) {
    System.out.println("\nSpeed used: three and three on a day in turn, in each session; told used / not used");
    row("true gain a flight", "drift over 24 sessions", "SD of a rep", "used in 8", "used in 24", "not used in 8", "not used in 24");
    for (double sd : new double[] {0.06, 0.09}) {
      for (double gain : new double[] {-0.03, 0, 0.03, 0.06, 0.09}) {
        for (double drift : new double[] {0, 0.05, 0.10}) {
          SeasonAthlete base = SeasonAthlete.of(1.0).measured(sd, 0).withReps(3);
          Met m = season(base.compared(3, gain, drift), 4, 24, n, 0, seed);
          row(String.format(Locale.ROOT, "%+.0f cm", 100 * gain), percent(drift), String.format(Locale.ROOT, "%.0f cm", 100 * sd),
              percent(m.thereWithin(Name.SPEED_USED, 8)), percent(m.thereWithin(Name.SPEED_USED, 24)),
              percent(m.missing(Name.SPEED_USED, 1, 8)), percent(m.missing(Name.SPEED_USED, 1, 24)));
        }
      }
    }
  }

  private static void jointly(int n, long seed) {
    System.out.println("\nAll inputs: form of the day, lengths of SD 4 %, three and three measured in each session, one day of twenty of pain or a load refused");
    row("share", "gain a flight", "fading over ten reps", "let up in 4 weeks, from 4", "from 6", "in 24 sessions, from 4", "told back");
    for (double share : new double[] {0.70, 0.80, 0.90, 0.95, 1.0}) {
      for (double[] g : new double[][] {{0.09, 0}, {0.06, -0.01}, {0, -0.01}, {0.09, -0.08}}) {
        SeasonAthlete kind = SeasonAthlete.of(share).withForm(0.3).measured(0.09, g[1]).compared(3, g[0], 0.05);
        Met four = season(kind, 4, 24, n, 0.05, seed);
        Met six = season(kind, 6, FOUR_WEEKS, n, 0.05, seed);
        row(String.format(Locale.ROOT, "%.2f", share), String.format(Locale.ROOT, "%+.0f cm", 100 * g[0]), percent(g[1]),
            percent(four.addedWithin(FOUR_WEEKS)), percent(six.addedWithin(FOUR_WEEKS)), percent(four.addedWithin(24)), percent(four.toldBack(1, 24)));
      }
    }
  }
}

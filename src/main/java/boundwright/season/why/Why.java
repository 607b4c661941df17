package boundwright.season.why;

import boundwright.season.Away;
import boundwright.season.SeasonInput;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.solve.Joint;
import boundwright.season.year.Choice;
import boundwright.season.year.Level;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Asks the rules themselves: what would be otherwise is chosen, the score is read, and what was there is chosen again. So every cost that
 * is told is exact for that one change; several changes together may cost less.
 */
public final class Why {
  private static final SessionKind[] BY_WEEK = {SessionKind.TEST, SessionKind.JUMPS, SessionKind.COMBINATIONS, SessionKind.BOUNDS};

  private final SeasonInput input;
  private final Joint joint;
  private final RuleWords words;

  /** About this plan; lines are left as they are. */
  public Why(SeasonInput input, Joint joint) {
    this.input = input;
    this.joint = joint.copy();
    this.words = new RuleWords(input);
  }

  private record Tried(int day, Choice choice, Cost cost, String refusal) {}

  /** The wishes that are not met, by athlete, in order of time. */
  public List<Unmet> unmet() {
    List<Unmet> out = new ArrayList<>();
    for (int a = 0; a < joint.athletes(); a++) {
      YearProblem p = joint.line(a).problem();
      for (int w = 0; 7 * w < p.days(); w++) {
        for (SessionKind kind : BY_WEEK) {
          int missing = p.wantedSessions(w, kind) - joint.line(a).sessions(w, kind);
          if (missing > 0) {
            out.add(week(a, w, kind, missing));
          }
        }
      }
      for (int t = 0; t < p.days(); t++) {
        if (p.wished(t) && joint.line(a).dayCost(t, Level.WISHES) > 0) {
          out.add(day(a, t));
        }
      }
    }
    return out;
  }

  private Unmet week(int a, int week, SessionKind kind, int missing) {
    Tried best = null;
    YearProblem p = joint.line(a).problem();
    for (int t = 7 * week; t < Math.min(p.days(), 7 * week + 7); t++) {
      for (Choice c : p.choices(t)) {
        if (c.session() != null && c.session().kind() == kind && c.index() != joint.line(a).chosen(t).index()) {
          best = better(best, attempt(a, t, c));
        }
      }
    }
    return told(a, 7 * week, missing + (missing == 1 ? " session of " : " sessions of ") + kind.label() + " in the week", best);
  }

  private Unmet day(int a, int t) {
    YearProblem p = joint.line(a).problem();
    Integer wish = p.wish(t);
    SessionKind kind = wish == null || wish < 0 ? null : kind(wish);
    Tried best = null;
    for (Choice c : p.choices(t)) {
      SessionKind of = c.session() == null ? null : c.session().kind();
      if (of == kind) {
        best = better(best, attempt(a, t, c));
      }
    }
    return told(a, t, kind == null ? "a day without a session" : kind.label() + " on the day", best);
  }

  private static SessionKind kind(int at) {
    return Arrays.stream(SessionKind.values()).filter(k -> k.at() == at).findFirst().orElseThrow();
  }

  private static Tried better(@Nullable Tried a, Tried b) {
    return a == null || b.cost().compareTo(a.cost()) < 0 ? b : a;
  }

  private Tried attempt(int a, int t, Choice c) {
    Choice before = joint.line(a).chosen(t);
    long[] now = joint.total().clone();
    boolean fits = joint.fits(a, t, c.venue());
    joint.choose(a, t, c);
    Tried out = new Tried(t, c, Cost.between(now, joint.total()), fits ? words.refusal(joint.line(a)) : words.full(c.venue(), t));
    joint.choose(a, t, before);
    return out;
  }

  private Unmet told(int a, int t, String wish, @Nullable Tried best) {
    String name = joint.line(a).problem().member().name();
    if (best == null) {
      return new Unmet(name, input.day(t), wish, noChoice(a, t), null, null, new Cost(Map.of()));
    }
    return new Unmet(name, input.day(t), wish, stands(best), input.day(best.day()), best.choice().session(), best.cost());
  }

  private static String stands(Tried t) {
    Level level = t.cost().decides();
    if (level == null) {
      return "no rule: a longer search may find it";
    }
    return switch (level) {
      case REFUSED -> "refused: " + t.refusal();
      case WISHES -> "another wish would not be met";
      case OFF -> "the week would be further off the load wanted";
      case CAUTIONS -> "closer to a limit of load";
      case PLACES -> "the coach would watch two places on that day";
      case UNEQUAL -> "the legs would differ more";
      case CHANGES -> "it would change what is published";
      case SAME -> "it would repeat the session before";
    };
  }

  private String noChoice(int a, int t) {
    Optional<Away.Why> away = joint.line(a).problem().member().away(input.day(t));
    return away.isPresent() ? "the athlete is not there" : "no place that is open allows it";
  }

  /** Why a day of an athlete is as it is. */
  public DayReasons day(long athleteId, LocalDate date) {
    int a = 0;
    while (joint.line(a).problem().member().id() != athleteId) {
      a++;
    }
    int t = input.number(date);
    YearLine line = joint.line(a);
    Session session = line.chosen(t).session();
    List<String> out = new ArrayList<>();
    if (line.problem().choices(t).size() == 1) {
      out.add(words.fixed(line.problem().member(), t, session));
    } else if (session == null) {
      rest(a, t, out);
    } else {
      larger(a, t, session, out);
      if (session.kind() != SessionKind.TEST) {
        out.add("Longest approach in it, as expected by then: " + session.steps() + " steps.");
      }
    }
    return new DayReasons(line.problem().member().name(), date, session, out);
  }

  private void rest(int a, int t, List<String> out) {
    Tried best = null;
    for (Choice c : joint.line(a).problem().choices(t)) {
      if (c.session() != null) {
        best = better(best, attempt(a, t, c));
      }
    }
    if (best != null) {
      Level level = best.cost().decides();
      out.add(level == Level.WISHES ? "The sessions wanted of this week lie on other days." : "A session here: " + stands(best) + ".");
    }
  }

  private void larger(int a, int t, Session session, List<String> out) {
    Choice now = joint.line(a).chosen(t);
    Choice next = null;
    for (Choice c : joint.line(a).problem().choices(t)) {
      boolean more = c.session() != null && c.session().kind() == session.kind() && c.venue() == now.venue() && c.contacts() > now.contacts();
      if (more && (next == null || c.contacts() < next.contacts())) {
        next = c;
      }
    }
    int week = joint.line(a).week(t / 7) / 100;
    out.add("The week has " + week + " of " + joint.line(a).problem().wantedLoad(t / 7) / 100 + " standing-bound contacts wanted.");
    if (next == null) {
      out.add("No larger session of the kind is allowed here.");
    } else {
      Tried tried = attempt(a, t, next);
      out.add((next.contacts() - now.contacts()) + " contacts more: " + stands(tried) + ".");
    }
    if (now.cautions() > 0 || joint.line(a).dayCost(t, Level.CAUTIONS) > 0) {
      out.add("Close to a limit of load: look at the athlete's load page on the day.");
    }
  }
}

package boundwright.cli.person;

import boundwright.athlete.Athlete;
import boundwright.load.back.BackDates;
import boundwright.load.back.BackStep;
import boundwright.load.back.ShortestWay;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.quantity.Notes;
import boundwright.readiness.back.BackAsk;
import boundwright.readiness.back.BackLook;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** What the back command prints; field by field in {@code docs/formats-json.md}. */
record BackAnswer(String athlete, List<Way> ways) {
  static final String CAUTION = "It never says that anybody may bound: a named clinician and a date do. Local rules and licensed medical staff come first; stop at any sign to refer.";

  /** One way back. */
  record Way(
      long id, String leg, String begun, double startPercent, double growthPercent, double formerWeek, int daysOff, String allowedBy, String allowedOn, boolean afterHold,
      int stages, int stage, double percent, String since, @Nullable String steppedBack, boolean held, boolean runs, String today, double mostToday, double week, double weekLimit,
      int restHours, List<Ask> asks, boolean mayStep, List<String> loadedDays, @Nullable Dates dates, List<Step> steps, @Nullable End end) {}

  /** One thing that the stage asks. */
  record Ask(String what, String met, String said) {}

  /** When the former week may be reached. */
  record Dates(String earliest, String from, String middle, String to, double share, double unfinished, double cleanShare, double missedShare) {}

  /** A step that was entered. */
  record Step(String date, String kind, int stage, String by, String note) {}

  /** The end. */
  record End(String date, String by, String why) {}

  static BackAnswer of(Workbench bench, Athlete who) {
    return new BackAnswer(who.name(), bench.backDesk().looks(who, bench.settings().kept().unit()).stream().map(BackAnswer::of).toList());
  }

  private static Way of(BackLook l) {
    WayBack w = l.way();
    Stages s = w.stages();
    WayBack.End end = w.end();
    int stage = Math.min(l.state().stage(), s.count() - 1);
    List<String> loaded = l.path().stream().filter(ShortestWay.Day::loaded).map(d -> l.today().plusDays(d.day()).toString()).toList();
    return new Way(
        w.id(), w.leg().label(), w.begun().toString(), 100 * s.startShare(), 100 * s.growth(), tenths(w.formerUnits()), w.daysOff(), w.clearance().by(),
        w.clearance().on().toString(), w.clearance().hold(), s.count(), l.state().stage() + 1, tenths(100 * l.share()), l.leg().since().toString(),
        l.leg().steppedBack() == null ? null : l.leg().steppedBack().toString(), l.held(), l.runs(), l.todaySaid(), l.runs() ? tenths(l.mostToday()) : 0, tenths(l.week()),
        tenths(l.leg().week(l.today())), 24 * s.restDays(stage), l.asks().stream().map(BackAnswer::of).toList(), l.mayStep(), loaded, dates(l),
        w.steps().stream().map(BackAnswer::of).toList(), end == null ? null : new End(end.date().toString(), end.by(), end.why()));
  }

  private static Ask of(BackAsk a) {
    return new Ask(a.what(), a.met().label(), a.said());
  }

  private static Step of(BackStep s) {
    return new Step(s.date().toString(), s.kind().label(), s.stage() + 1, s.by(), s.note());
  }

  private static @Nullable Dates dates(BackLook l) {
    BackDates d = l.dates();
    return d == null
        ? null
        : new Dates(
            d.earliest().toString(), d.from().toString(), d.middle().toString(), d.to().toString(), BackDates.SHARE, d.unfinished(), l.chances().cleanShare(),
            l.chances().missedShare());
  }

  private static double tenths(double x) {
    return Math.round(10 * x) / 10.0;
  }

  void print(PrintWriter out) {
    out.println(athlete);
    if (ways.isEmpty()) {
      out.println("  no leg on its way back");
    }
    for (Way w : ways) {
      out.println(
          "  way back " + w.id() + ", " + w.leg() + " leg, since " + w.begun() + ": allowed by " + w.allowedBy() + " from " + w.allowedOn()
              + (w.afterHold() ? ", who ended the medical hold" : "") + "; " + Notes.counted(w.daysOff(), "day") + " off before");
      End end = w.end();
      if (end != null) {
        out.println("    ended on " + end.date() + " by " + end.by() + ": " + end.why());
        continue;
      }
      out.println("    " + w.today());
      out.println(
          String.format(
              Locale.ROOT, "    stage %d of %d since %s: %.0f %% of a former week of %.0f standing-bound contacts; %d hours between", Math.min(w.stage(), w.stages()), w.stages(), w.since(),
              w.percent(), w.formerWeek(), w.restHours()));
      if (w.steppedBack() != null) {
        out.println("    stepped back for the pain of " + w.steppedBack());
      }
      for (Ask a : w.asks()) {
        out.println("    " + a.what() + ", " + a.met() + ": " + a.said());
      }
      Dates d = w.dates();
      if (d != null) {
        out.println("    former week: in eight of ten simulated ways " + d.from() + " to " + d.to() + "; not before " + d.earliest());
      }
      IntStream.range(0, w.steps().size()).forEach(i -> step(out, w.steps().get(i)));
    }
    if (!ways.isEmpty()) {
      out.println("  " + CAUTION);
    }
  }

  private static void step(PrintWriter out, Step s) {
    out.println("    " + s.date() + ": " + s.kind() + " to stage " + s.stage() + ", " + s.by() + (s.note().isEmpty() ? "" : ": " + s.note()));
  }
}

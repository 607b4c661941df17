package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.flight.Forecast;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.Beginning;
import boundwright.runway.InHundred;
import boundwright.runway.LogNext;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Window;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Writes marks for a coach to read: the answer first, then where the contacts fall, how sure that is and why. */
final class MarksText {
  private static final int WIDTH = 88;
  /** A figure before its unit or the rest of it: never parted from it at the end of a line. */
  private static final Pattern FIGURE = Pattern.compile("(\\d) (?=(?:m|cm|ft|in|%|\\d/\\d)\\b)");

  private final PrintWriter out;
  private final LengthUnit unit;

  MarksText(PrintWriter out, LengthUnit unit) {
    this.out = out;
    this.unit = unit;
  }

  /** Prints all of it; {@code next} is what logging the next rep should add, or null. */
  void print(Athlete athlete, MarkAdvice advice, boolean flat, @Nullable LogNext next, List<String> warnings, DayVerdict day, List<String> wayBack) {
    if (flat) {
      ground(advice.groundNeeded_m());
    } else {
      line(
          "MARK",
          unit.write(advice.markToSand_m()) + " from the sand"
              + (advice.beginning() != null ? " (a beginning)" : advice.window() == null ? " (the best there is)" : ""));
    }
    start(advice.forecast().approachSteps(), advice.startToMark());
    if (!flat) {
      chances(advice);
    }
    out.println();
    contacts(athlete, advice.forecast());
    out.println();
    wrapped("How sure", advice.sure());
    wrapped("From", advice.from());
    if (!flat) {
      if (next != null) {
        wrapped("Next", next.said() + " " + next.why());
      }
      advice.openers().forEach(o -> wrapped("Or else", o.said()));
    }
    warnings.forEach(w -> wrapped("Take care", w));
    load(day, wayBack);
  }

  /** The verdict of the day, and what the stage of a leg on its way back allows. */
  void load(DayVerdict day, List<String> wayBack) {
    wrapped("Load", day.said() + day.body().map(f -> " " + f.said()).orElse(""));
    wayBack.forEach(said -> wrapped("", said));
  }

  /** What a rep on the flat takes [m]. */
  void ground(double needed) {
    line("GROUND", unit.write(needed) + " of level ground, start mark to landing");
  }

  void start(int steps, Estimate startToMark) {
    line("Start", steps == 0 ? "at the mark, from standing" : unit.write(startToMark.p50()) + " behind the mark, " + steps + " approach steps");
  }

  void works(@Nullable Window window, int askedInHundred) {
    if (window != null) {
      line(
          "Works",
          "from " + unit.write(window.min_m()) + " to " + unit.write(window.max_m()) + ", where at least " + InHundred.said(askedInHundred) + " count");
    }
  }

  /** That a rep counts, and the runway that it takes [m]. */
  void chance(int inHundred, double needed) {
    line("Chance", InHundred.said(inHundred) + " that the rep counts");
    line("Runway", unit.write(needed) + " needed, start mark to sand");
  }

  private void chances(MarkAdvice advice) {
    works(advice.window(), advice.askedInHundred());
    Beginning beginning = advice.beginning();
    if (beginning != null) {
      line("Begin", beginning.odds() + " land in the sand; " + beginning.soon());
    }
    chance(advice.inHundred(), advice.runwayNeeded_m());
  }

  private void contacts(Athlete athlete, Forecast forecast) {
    Sequence sequence = forecast.sequence();
    out.println(
        athlete.name() + ", " + sequence.text() + ": " + sequence.size() + (sequence.size() == 1 ? " contact, " : " contacts, ")
            + sequence.count(Foot.RIGHT) + " right, " + sequence.count(Foot.LEFT)
            + " left. From the mark, nine reps in ten between the last two:");
    for (int c = 1; c <= sequence.size(); c++) {
      row(String.valueOf(c), sequence.contacts().get(c - 1).label(), forecast.position(c));
    }
    row("", "landing", forecast.landing());
  }

  private void row(String contact, String what, Estimate at) {
    out.println(
        String.format(
            Locale.ROOT,
            "  %2s  %-8s%16s   %16s  %16s",
            contact, what, unit.write(at.p50()), unit.write(at.p05()), unit.write(at.p95())));
  }

  void line(String label, String text) {
    out.println(String.format(Locale.ROOT, "%-12s%s", label, text));
  }

  /** A paragraph with its label, broken at words. */
  void wrapped(String label, String text) {
    StringBuilder now = new StringBuilder(String.format(Locale.ROOT, "%-12s", label));
    boolean fresh = true;
    for (String joined : FIGURE.matcher(text).replaceAll("$1\u00a0").split("\\s+")) {
      String word = joined.replace('\u00a0', ' ');
      if (!fresh && now.length() + 1 + word.length() > WIDTH) {
        out.println(now);
        now = new StringBuilder(" ".repeat(12));
        fresh = true;
      }
      now.append(fresh ? "" : " ").append(word);
      fresh = false;
    }
    out.println(now);
  }

  /** A chance in whole reps of a hundred; never 0 or 100, which nobody can promise. */
  static String chance(double chance) {
    return chance >= 0.995
        ? "over 99 in 100"
        : chance < 0.005 ? "under 1 in 100" : String.format(Locale.ROOT, "%.0f in 100", chance * 100);
  }
}

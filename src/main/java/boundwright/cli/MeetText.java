package boundwright.cli;

import boundwright.jump.MeasureRule;
import boundwright.meet.Attempt;
import boundwright.meet.Combined;
import boundwright.meet.KeptAttempt;
import boundwright.meet.Meet;
import boundwright.meet.MeetNow;
import boundwright.meet.MeetSheet;
import boundwright.meet.Placing;
import boundwright.meet.Wind;
import boundwright.quantity.LengthUnit;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Writes a meet for a coach to read. */
final class MeetText {
  private final PrintWriter out;
  private final LengthUnit unit;

  MeetText(PrintWriter out, LengthUnit unit) {
    this.out = out;
    this.unit = unit;
  }

  /** The ranks, who jumps next, and who goes on. */
  void now(MeetNow now) {
    MeetSheet sheet = now.sheet();
    Meet meet = now.meet();
    Combined part = sheet.rules().combined();
    out.println(sheet.name() + ", " + sheet.date() + ", " + sheet.event().label() + (part == null ? "" : " of the " + part.table().label()) + ", " + sheet.competition() + ", board to sand " + unit.write(sheet.board_m()) + " (meet " + sheet.id() + ")");
    if (meet == null) {
      out.println("Nobody is on the list yet: boundwright meet enter --athlete NAME or --rival LABEL.");
      return;
    }
    List<String> goOn = meet.goesOn();
    for (Placing p : now.placings()) {
      Integer rank = p.rank();
      Double best = p.best_m();
      Integer points = now.points(p);
      StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "  %3s  %-24s%16s", rank == null ? "" : rank + ".", p.athlete(), best == null ? "no mark" : unit.write(best)));
      line.append(String.format(Locale.ROOT, "  %-10s", points == null ? "" : points + " points"));
      for (int round = 1; round <= meet.rules().rounds(); round++) {
        Attempt a = meet.attempt(p.athlete(), round);
        line.append(String.format(Locale.ROOT, unit == LengthUnit.METRES ? "  %-14s" : "  %-21s", a == null ? "." : brief(a, meet.rules().measure())));
      }
      if (meet.hasCut() && goOn.contains(p.athlete())) {
        line.append("goes on");
      }
      out.println(line.toString().stripTrailing());
    }
    if (part != null) {
      now.placings().forEach(p -> wind(p, now.windWords(p)));
      out.println("  " + part.wind().about());
    } else if (meet.attempts().stream().map(Attempt::wind).anyMatch(w -> w != null && !Wind.legal(w))) {
      out.println(String.format(Locale.ROOT, "  * wind above %+.1f m/s: counts for the rank, not for records", Wind.LIMIT));
    }
    out.println(
        now.next() == null
            ? "All attempts are entered."
            : "Next: " + now.next() + ", round " + now.round() + " of " + meet.rules().rounds() + "."
                + (meet.hasCut() ? " " + meet.rules().finalists() + " go on after round " + meet.rules().firstRounds() + ", as the marks stand." : ""));
  }

  private void wind(Placing p, @Nullable String words) {
    if (words != null) {
      out.println("  " + p.athlete() + ", " + words + ".");
    }
  }

  private String brief(Attempt a, MeasureRule measure) {
    Double d = a.distance_m();
    Double w = a.wind();
    return (d == null ? a.result().mark() : unit.write(measure.down(d)))
        + (d == null || w == null ? "" : String.format(Locale.ROOT, " %+.1f%s", Wind.rounded(w), Wind.legal(w) ? "" : "*"));
  }

  /** One attempt as it was kept or taken back. */
  void attempt(String what, KeptAttempt kept, MeasureRule measure) {
    Attempt a = kept.attempt();
    Double gap = a.gap_m();
    new MarksText(out, unit)
        .wrapped(
            what,
            a.athlete() + ", round " + a.round() + ": " + (a.result() == Attempt.Result.VALID ? "" : a.result().name().toLowerCase(Locale.ROOT) + " ") + brief(a, measure)
                + (gap == null ? "" : ", gap " + unit.write(gap)) + (a.startShift_m() == 0 ? "" : ", start moved " + unit.write(a.startShift_m())) + ".");
  }
}

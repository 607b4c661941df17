package boundwright.meet.day;

import boundwright.approach.ApproachAnswer;
import boundwright.approach.ApproachDesk;
import boundwright.approach.run.LearnedShifts;
import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.meet.Entrant;
import boundwright.meet.MeetSheet;
import boundwright.quantity.Estimate;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Puts the sheet of a meet's day together. */
public final class DayDesk {
  private static final Estimate NOTHING = new Estimate(0, 0, 0);

  private final MeetDayLog days;
  private final AthleteRepository athletes;
  private final ApproachDesk approach;

  /** Works on these. */
  public DayDesk(MeetDayLog days, AthleteRepository athletes, ApproachDesk approach) {
    this.days = days;
    this.athletes = athletes;
    this.approach = approach;
  }

  /** The sheet as it is now. */
  public DaySheet sheet(MeetSheet sheet) {
    MeetDay day = days.day(sheet.id()).orElse(null);
    List<DaySheet.Mark> marks = new ArrayList<>();
    List<String> order = new ArrayList<>();
    for (Entrant e : sheet.entrants()) {
      order.add(e.name());
      Long id = e.athleteId();
      Athlete athlete = id == null ? null : athletes.byId(id).orElse(null);
      if (athlete != null) {
        marks.add(mark(athlete, e.name(), order.size(), day, sheet));
      }
    }
    return new DaySheet(sheet, day, day == null ? List.of() : DaySheet.moments(day), marks, order);
  }

  private DaySheet.Mark mark(Athlete athlete, String name, int place, @Nullable MeetDay day, MeetSheet sheet) {
    LocalTime first = day == null ? null : day.starts().plusSeconds((long) (place - 1) * sheet.rules().trialSeconds());
    try {
      ApproachAnswer a = approach.answer(athlete, sheet.event(), null, null, null);
      LearnedShifts shifts = a.shifts();
      Estimate start = a.plan().startMark_m();
      Double wind = day == null ? null : day.wind();
      Estimate moved = day == null || wind == null ? NOTHING : shifts.moveFor(wind, day.windGive());
      double half = Math.hypot(start.halfWidth(), moved.halfWidth());
      double middle = start.p50() + moved.p50();
      String rests = rests(shifts, wind != null);
      return new DaySheet.Mark(
          name, athlete.id(), place, first, a.plan().steps(), start, moved, new Estimate(middle - half, middle, middle + half), rests);
    } catch (RefusedException nothingToGoBy) {
      return new DaySheet.Mark(name, athlete.id(), place, first, 0, null, NOTHING, null, String.valueOf(nothingToGoBy.getMessage()));
    }
  }

  private static String rests(LearnedShifts shifts, boolean windExpected) {
    if (shifts.runs() == 0) {
      return "No run-through with its board gap is logged, so the mark is a first guess and stays.";
    }
    return Notes.counted(shifts.runs(), "run-through")
        + (!windExpected
            ? "; no wind is expected, so the mark is the usual one."
            : shifts.windTold()
                ? String.format(Locale.ROOT, ", usually in %+.1f m/s.", shifts.usualWind())
                : "; they cannot tell what wind does to this run-up, so the mark stays.");
  }
}

package boundwright.meet.day;

import boundwright.meet.MeetSheet;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What hangs on the bag on the day of a meet.
 *
 * @param sheet the meet
 * @param day its times and the likely wind, or null until the coach said when it starts
 * @param moments of the day in order; empty without {@code day}
 * @param marks of those of the squad on the list, in the order drawn
 * @param order everybody in the order drawn
 */
public record DaySheet(MeetSheet sheet, @Nullable MeetDay day, List<Moment> moments, List<Mark> marks, List<String> order) {
  /**
   * A moment of the day.
   *
   * @param at when
   * @param what is to be done, in words
   * @param hard whether the meet sets it, not the coach
   */
  public record Moment(LocalTime at, String what, boolean hard) {}

  /**
   * An athlete's start mark.
   *
   * @param athlete name as on the list
   * @param athleteId number in the squad
   * @param place in the order, 1 is first
   * @param first about when the first attempt comes, or null without times
   * @param steps of the run-up, 0 when nothing is told
   * @param start_m start mark to take-off line without any wind in it [m], or null when nothing is told
   * @param moved_m how far it moves for the likely wind, + back [m]
   * @param windStart_m where it then lies [m], or null when nothing is told
   * @param rests what it rests on, or why nothing is told
   */
  public record Mark(
      String athlete,
      long athleteId,
      int place,
      @Nullable LocalTime first,
      int steps,
      @Nullable Estimate start_m,
      Estimate moved_m,
      @Nullable Estimate windStart_m,
      String rests) {

    /** The move in words, between the two marks as they are written: how far and which way, or that it stays. */
    public String move(LengthUnit unit) {
      Estimate from = start_m;
      Estimate to = windStart_m;
      double by = from == null || to == null ? 0 : unit.round(to.p50()) - unit.round(from.p50());
      return Math.abs(by) < unit.step() / 2
          ? "stays"
          : unit.writeSmall(Math.abs(by)) + (by > 0 ? " back" : " forward") + " (" + signed(unit, moved_m.p05()) + " to " + signed(unit, moved_m.p95()) + ")";
    }

    private static String signed(LengthUnit unit, double metres) {
      double written = unit.round(metres);
      return (written > 0 ? "+" : written < 0 ? "-" : "") + unit.writeSmall(metres);
    }
  }

  /** Takes copies. */
  public DaySheet {
    moments = List.copyOf(moments);
    marks = List.copyOf(marks);
    order = List.copyOf(order);
  }

  /** Counted back from the start: call room, then the parts of the warm-up before it (common practice). */
  static List<Moment> moments(MeetDay d) {
    LocalTime call = d.starts().minusMinutes(d.callRoom_min());
    LocalTime begin = call.minusMinutes(d.warmUp_min());
    List<Moment> out = new ArrayList<>();
    out.add(new Moment(begin, "easy running", false));
    out.add(new Moment(begin.plusMinutes(Math.round(d.warmUp_min() * 0.2)), "mobility and drills", false));
    out.add(new Moment(begin.plusMinutes(Math.round(d.warmUp_min() * 0.5)), "accelerations, short bounds", false));
    out.add(new Moment(begin.plusMinutes(Math.round(d.warmUp_min() * 0.85)), "spikes on, drink, list and tape in hand", false));
    out.add(new Moment(call, "call room closes", true));
    if (d.callRoom_min() >= 10) {
      out.add(new Moment(d.starts().minusMinutes(Math.round(d.callRoom_min() * 0.6)), "on the runway: tape the start mark, two run-throughs", false));
    }
    out.add(new Moment(d.starts(), "first attempt of the competition", true));
    return out;
  }

  /** The likely wind in words; empty when none is expected. */
  public String windWords() {
    MeetDay d = day;
    Double w = d == null ? null : d.wind();
    return d == null || w == null ? "" : String.format(Locale.ROOT, "%+.1f m/s, within %.1f", w, d.windGive());
  }
}

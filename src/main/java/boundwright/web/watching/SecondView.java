package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.quantity.Interval;
import boundwright.quantity.LengthUnit;
import boundwright.technique.Agreement;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.IntraclassCorrelation.Form;
import boundwright.technique.IntraclassCorrelation;
import boundwright.web.athlete.WorkView;
import boundwright.web.page.Figures;
import boundwright.web.page.Written;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * The last judged reps, to be judged again by somebody else; and how far observers agreed. What the coach ticked is not shown
 * beside the form, so that the second look stays one of its own.
 *
 * @param athlete whose
 * @param reps the last judged reps, newest first
 * @param observers each with the agreement
 * @param catalogue the faults that can be ticked
 * @param written what became of the form
 * @param token makes a double tap one entry
 * @param unit the coach's unit
 * @param today the day
 */
public record SecondView(
    Athlete athlete,
    List<Rep> reps,
    List<Observer> observers,
    FaultCatalogue catalogue,
    Written written,
    String token,
    LengthUnit unit,
    LocalDate today) {
  /**
   * One other observer.
   *
   * @param name as written
   * @param agreement with the coach
   * @param reps those that both judged
   */
  public record Observer(String name, Agreement agreement, List<Rep> reps) {
    /** The rep of a disagreement. */
    public Optional<Rep> rep(long id) {
      return reps.stream().filter(r -> r.id() == id).findFirst();
    }
  }

  /** How far the numbers of faults per rep agree, in a sentence, or empty. */
  public String counts(Agreement a) {
    IntraclassCorrelation icc = a.counts();
    if (icc == null) {
      return "";
    }
    Interval i = icc.interval(Form.RANDOM_SINGLE);
    return "Number of faults per rep: correlation between the observers " + Figures.fixed(icc.value(Form.RANDOM_SINGLE), 2) + " (95 % interval "
        + Figures.fixed(i.low(), 2) + " to " + Figures.fixed(i.high(), 2) + "; 1 is full agreement).";
  }

  /** What is known of a rep beside its technique. */
  public String told(Rep rep) {
    return WorkView.result(rep, unit);
  }

  /** A day as it is read. */
  public String day(LocalDate day) {
    return Figures.day(day, today);
  }
}

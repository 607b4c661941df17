package boundwright.web.athlete;

import boundwright.account.Club;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.footfall.Foot;
import boundwright.footfall.Routine;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Figures;
import boundwright.web.page.TwoHands;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What is kept of an athlete, to be changed; or a new one.
 *
 * @param profile what is kept, or null for a new athlete
 * @param unit the coach's unit
 * @param written what was written in a refused form, by field
 * @param refusedForm which form was refused: {@code athlete}, {@code test}, {@code runup}, {@code person}, {@code consent}, {@code transfer}, {@code erase}, or empty
 * @param refused why
 * @param said what was just done, or empty
 * @param today the day, for the date fields
 * @param token against a form that is sent twice
 * @param person birth date and what was agreed to, or null for a new athlete
 * @param clubs the other clubs
 * @param offeredTo the club that they are offered to, or empty
 */
public record EditView(
    @Nullable Profile profile,
    LengthUnit unit,
    Map<String, String> written,
    String refusedForm,
    String refused,
    String said,
    String today,
    String token,
    @Nullable PersonView person,
    List<Club> clubs,
    String offeredTo) {
  /** What stands in a field: what was written, or what is kept. */
  public String field(String form, String name, String kept) {
    return refusedForm.equals(form) ? written.getOrDefault(name, kept) : kept;
  }

  /** The sentence beside a form, or empty. */
  public String refusal(String form) {
    return refusedForm.equals(form) ? refused : "";
  }

  /** What the athlete's form is made from: who saves it has seen this. */
  public String was() {
    return profile == null ? "" : TwoHands.was(EditHandler.fields(profile.athlete()));
  }

  /** Where the athlete's forms are sent. */
  public String address() {
    return profile == null ? "/athlete/new" : "/athlete/" + profile.athlete().id();
  }

  /** The levels to choose from; that it is not set only while it is not. */
  public List<Level> levels() {
    return profile != null && profile.athlete().level() == Level.NOT_SET ? List.of(Level.values()) : Level.KNOWN;
  }

  /** The feet to choose from. */
  public List<Foot> feet() {
    return List.of(Foot.values());
  }

  /** The rungs of the progression. */
  public List<Integer> rungs() {
    return Routine.RUNGS;
  }

  /** The tests to choose from. */
  public List<KnownMark.Kind> kinds() {
    return List.of(KnownMark.Kind.values());
  }

  /** A test in words. */
  public String told(KnownMark mark) {
    return mark.kind().label() + " " + unit.write(mark.distance_m())
        + (mark.approachSteps() == 0 ? "" : " " + Figures.fromSteps(mark.approachSteps()));
  }

  /** A run-up in words. */
  public String told(MeasuredRunUp run) {
    return Figures.rung(run.steps()) + " in " + unit.write(run.length_m())
        + (run.speed_mps() == null ? "" : ", " + run.speed_mps() + " m/s at the mark");
  }
}

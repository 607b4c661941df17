package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.load.GuardOverride;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.LegCare;
import boundwright.load.back.LegBack;
import boundwright.load.rating.SessionRating;
import boundwright.web.page.Figures;
import boundwright.web.page.Written;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Pain, medical holds, growing, session ratings and what was decided against the guard.
 *
 * @param athlete whose
 * @param care what is kept
 * @param ratings newest first
 * @param overrides newest first
 * @param written what became of the forms
 * @param token makes a double tap one entry
 * @param today the day
 */
public record CareView(
    Athlete athlete,
    LegCare care,
    List<SessionRating> ratings,
    List<GuardOverride> overrides,
    Written written,
    String token,
    LocalDate today) {
  /**
   * The signs at which one stops and refers, as they are shown: plain words, nothing to be diagnosed from.
   * Their source is {@link boundwright.load.LoadSources#REFER}.
   */
  public static final List<String> SIGNS =
      List.of(
          "Pain on one bony spot",
          "Pain at night or at rest",
          "Pain that climbs during the session",
          "Cannot hop on that leg",
          "Front of the shin, top or outer edge of the foot, inner ankle, or groin",
          "Low back of a teenager",
          "Swelling, giving way, or a pop",
          "Pain above 5, or not settled next morning");

  /** Body areas that are offered. */
  public static final List<String> AREAS =
      List.of(
          "right shin", "left shin", "right knee", "left knee", "right ankle", "left ankle", "right heel", "left heel", "right foot", "left foot",
          "right calf", "left calf", "right thigh", "left thigh", "right hip", "left hip", "groin", "low back");

  /** Pains, newest first. */
  public List<Pain> pains() {
    return care.pains().stream().sorted(Comparator.comparing(Pain::date).thenComparing(Pain::id).reversed()).toList();
  }

  /** Pains of earlier days of which it is not known whether they had settled by next morning. */
  public List<Pain> toAsk() {
    return pains().stream().filter(p -> p.level() > 0 && p.settled() == null && p.date().isBefore(today)).toList();
  }

  /** The hold that stands today, or null. */
  public @Nullable MedicalHold open() {
    return care.standing(today).orElse(null);
  }

  /** Legs that are on their way back, a sentence each. */
  public List<String> backs() {
    return care.backs().stream().filter(b -> b.holds(today)).map(LegBack::said).toList();
  }

  /** Holds that a clinician ended, newest first. */
  public List<MedicalHold> ended() {
    return care.holds().stream()
        .filter(h -> !h.stands(today))
        .sorted(Comparator.comparing(MedicalHold::from).reversed())
        .toList();
  }

  /** A pain in words. */
  public String told(Pain p) {
    String settled = p.settled() == null ? "" : p.settled() ? ", settled next morning" : ", not settled next morning";
    return p.level() + " of 10, " + p.area() + settled + (p.refer() ? ", with a sign to stop and refer" : "");
  }

  /** A day as it is read. */
  public String day(LocalDate day) {
    return Figures.day(day, today);
  }
}

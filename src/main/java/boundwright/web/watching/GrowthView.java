package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.athlete.growth.GrowthAnswer;
import boundwright.athlete.growth.GrowthWords;
import boundwright.athlete.growth.Measurement;
import boundwright.picture.growth.GrowthDrawing;
import boundwright.picture.growth.GrowthPicture;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Figures;
import boundwright.web.page.Written;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How an athlete grows.
 *
 * @param athlete whose
 * @param answer what is said
 * @param unit the coach's
 * @param written what became of the forms
 * @param token makes a double tap one entry
 * @param today the day
 */
public record GrowthView(Athlete athlete, GrowthAnswer answer, LengthUnit unit, Written written, String token, LocalDate today) {
  /** Writes them. */
  public GrowthWords words() {
    return new GrowthWords(unit, Figures::dayOfYear);
  }

  /** What is read first: how fast and how sure, what that changes, when to measure next. */
  public List<String> first() {
    GrowthWords w = words();
    return List.of(w.speed(answer), w.fast(answer), w.next(answer, today)).stream().filter(s -> !s.isEmpty()).toList();
  }

  /** The picture, or null with heights of fewer than two days. */
  public @Nullable GrowthPicture picture() {
    return answer.curve().isEmpty() ? null : GrowthDrawing.of(athlete.name(), answer, words());
  }

  /** Measurements, newest first. */
  public List<Measurement> measured() {
    List<Measurement> out = new ArrayList<>(answer.measured());
    Collections.reverse(out);
    return out;
  }

  /** A day as it is read. */
  public String day(LocalDate day) {
    return Figures.dayOfYear(day);
  }
}

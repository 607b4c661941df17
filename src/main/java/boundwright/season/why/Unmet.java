package boundwright.season.why;

import boundwright.season.Session;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A wish that is not met.
 *
 * @param athlete whose
 * @param from the day, or the first day of the week, that it is for
 * @param wish in words
 * @param stands which rule stands against it, in words
 * @param nearest the day on which it would cost least, or null if there is none
 * @param instead what would be done on that day, or null
 * @param cost what giving way would cost
 */
public record Unmet(
    String athlete, LocalDate from, String wish, String stands, @Nullable LocalDate nearest, @Nullable Session instead, Cost cost) {}

package boundwright.season;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A wish for one day.
 *
 * @param date which day
 * @param kind what is wished for, or null: a day without a session
 */
public record Wish(LocalDate date, @Nullable SessionKind kind) {}

package boundwright.meet;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What another phone entered of an attempt that was kept already and that it had not seen. It counts nothing until the coach chooses.
 *
 * @param id number in the store
 * @param kept what it says; its own number is 0
 * @param at when it was entered, by the program's clock; null if not known
 * @param stands what counts now, or null if that was taken out since
 * @param stoodAt when that was entered, or null if not known
 */
public record Beside(long id, KeptAttempt kept, @Nullable Instant at, @Nullable KeptAttempt stands, @Nullable Instant stoodAt) {}

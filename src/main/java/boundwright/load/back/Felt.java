package boundwright.load.back;

import java.time.LocalDate;

/**
 * What was felt on a day.
 *
 * @param date the day
 * @param grade what it means
 */
public record Felt(LocalDate date, Grade grade) {}

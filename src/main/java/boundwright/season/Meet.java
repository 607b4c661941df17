package boundwright.season;

import java.time.LocalDate;

/**
 * A meet.
 *
 * @param key short, by which athletes enter for it
 * @param name as the coach calls it
 * @param date its day
 */
public record Meet(String key, String name, LocalDate date) {}

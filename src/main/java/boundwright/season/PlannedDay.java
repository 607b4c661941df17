package boundwright.season;

import java.time.LocalDate;

/**
 * A day with work.
 *
 * @param date which
 * @param session what is done
 */
public record PlannedDay(LocalDate date, Session session) {}

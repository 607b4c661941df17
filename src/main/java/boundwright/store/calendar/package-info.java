/** Calendars as files of RFC 5545. */
@NullMarked
package boundwright.store.calendar;

import org.jspecify.annotations.NullMarked;

/** Calendars read back by readers that did not write them. */
@NullMarked
package boundwright.store.calendar;

import org.jspecify.annotations.NullMarked;

/** The season: all of it on one page, a week of it, on paper, and the addresses of its calendars. */
@NullMarked
package boundwright.web.season;

import org.jspecify.annotations.NullMarked;

/** The commands about a season: plan it, mend it, say why, write its calendars. Thin over {@code season}. */
@NullMarked
package boundwright.cli.season;

import org.jspecify.annotations.NullMarked;

/**
 * The two files of a season: what it is planned from, and the plan, see {@code docs/season-file.md}. They are what a coach writes and
 * keeps, what is sent to the page and the command line, and the form in which the database keeps a season, so that there is one
 * reader for all of them. Beside {@code web} and {@code cli} this is the one place that knows JSON.
 */
@NullMarked
package boundwright.store.season;

import org.jspecify.annotations.NullMarked;

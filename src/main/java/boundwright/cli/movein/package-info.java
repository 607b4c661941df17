/** A coach's own spreadsheet, from the command line. */
@NullMarked
package boundwright.cli.movein;

import org.jspecify.annotations.NullMarked;

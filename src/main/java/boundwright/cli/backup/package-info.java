/** Backups on the command line: made, brought back, and looked through. */
@NullMarked
package boundwright.cli.backup;

import org.jspecify.annotations.NullMarked;

/** Backups that stay, leave and come back. */
@NullMarked
package boundwright.store.backup;

import org.jspecify.annotations.NullMarked;

/**
 * What keeps the data safe: copies that were looked at, which of them stay, how they leave the machine and come back, who may not come back
 * with them, and how a loss is noticed. Works on files and plain connections, so that it also works on a database that no longer opens.
 */
@NullMarked
package boundwright.store.backup;

import org.jspecify.annotations.NullMarked;

/** Accounts, sessions and notes in the database. */
@NullMarked
package boundwright.store.account;

import org.jspecify.annotations.NullMarked;

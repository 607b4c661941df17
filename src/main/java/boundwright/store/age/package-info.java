/**
 * Files sealed with a passphrase, in the open format age-encryption.org/v1, so that a backup that left the machine can be opened without
 * this program too. Knows nothing of athletes or databases.
 */
@NullMarked
package boundwright.store.age;

import org.jspecify.annotations.NullMarked;

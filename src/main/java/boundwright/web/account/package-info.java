/** Logging in and out, one's own account, and who is what in a club. */
@NullMarked
package boundwright.web.account;

import org.jspecify.annotations.NullMarked;

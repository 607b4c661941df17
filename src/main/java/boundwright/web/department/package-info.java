/** Speaks OpenID Connect with the server of a department: where people are sent to log in there, and what it says of them when they are back. */
@NullMarked
package boundwright.web.department;

import org.jspecify.annotations.NullMarked;

@NullMarked
package boundwright.account;

import org.jspecify.annotations.NullMarked;

/** What is asked of the machine's files and addresses before a secret is trusted to them. */
@NullMarked
package boundwright.machine;

import org.jspecify.annotations.NullMarked;

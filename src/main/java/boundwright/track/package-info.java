/**
 * What happens at the runway as one service each: the day that was planned as work of the legs. The screens, the command line and an
 * import ask the same lines.
 */
@NullMarked
package boundwright.track;

import org.jspecify.annotations.NullMarked;

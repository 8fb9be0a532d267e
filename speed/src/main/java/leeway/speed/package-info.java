/**
 * JMH benchmarks: ours and a general-purpose peer behind one interface, in the same run, the same answer asserted first.
 * <p>Lives here: benchmarks and their peers only; nothing depends on this module.
 */
package leeway.speed;

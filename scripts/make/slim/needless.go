package slim

import (
	"slices"
	"strings"
)

// What a browser's program never comes to: traces that nobody starts, reports that only the
// variable GODEBUG asks for, profiles, and what is printed before the runtime gives up. Each of
// these ends the program, should it be called all the same; a name stands for all that begin
// with it.
var neverCalled = []string{
	"runtime.traceAcquireEnabled", "runtime.traceAdvance", "runtime.traceBufFlush", "runtime.traceCPUFlush", "runtime.traceEventWriter.",
	"runtime.traceLocker.", "runtime.traceReadCPU", "runtime.traceReader", "runtime.traceRegister", "runtime.traceStack", "runtime.traceSyncBatch",
	"runtime.traceWriter.", "runtime.(*trace", "runtime.dump", "runtime.makeTraceFrames",
	"runtime.schedtrace", "runtime.checkFinalizersAndCleanups", "runtime.setCheckmark", "runtime.runCheckmark", "runtime.printScav", "runtime.fmtNSAsMS",
	"runtime.doRecordGoroutineProfile", "runtime.tryRecordGoroutineProfile", "runtime.(*profBuf)",
	"runtime.hexdump", "runtime.(*hexdumper)", "runtime.gcDumpObject", "runtime.(*mspan).reportZombies", "runtime.badPointer",
	"runtime.traceback2", "runtime.tracebackHexdump", "runtime.printArgs", "runtime.printFuncName", "runtime.printcreatedby", "runtime.printAncestor", "runtime.printCgo", "runtime.printOneCgo",
	"runtime.typesEqual", "runtime.panicwrap", "runtime.printanycustomtype", "runtime.printquoted",
	"runtime.stkbucket", "runtime.saveblockevent", "runtime.mexit", "runtime.(*p).destroy",
	"runtime.testAtomic64", "runtime.findGoroutineLeaks",
	"runtime.traceback1.func1", "runtime.tracebacksomeothers.func1", "runtime.traceStopReadCPU", "runtime.saveBlockEventStack",
	"runtime.getOrSetBubbleSpecial", "runtime.(*synctestBubble)", "runtime.(*mspan).setUserArenaChunkToFault",
	// There is one thread, and no call that it waits in.
	"runtime.newm", "runtime.startm", "runtime.handoffp", "runtime.stoplockedm", "runtime.oneNewExtraM",
	"runtime.reentersyscall", "runtime.exitsyscall", "runtime.entersyscallHandleGCWait", "runtime.syscallingThread",
}

// These ask whether there is a trace.
var called = []string{"runtime.traceLocker.ok", "runtime.traceReaderAvailable"}

// What is called and has no result, and does nothing that is missed: of a panic its message is
// printed, and no trace, in which the names would be missing; other modules than the program
// there are none; the runtime need not try itself, nor its processor, nor note who allocates, nor
// read GODEBUG, which nobody sets; and a program that waits for the page is not stuck.
var doNothing = []string{
	"runtime.moduledataverify1", "runtime.check", "runtime.checkdead", "runtime.mProf_Malloc", "runtime.parsegodebug", "internal/runtime/exithook.Run",
	"internal/cpu.processOptions", "runtime.traceback1", "runtime.tracebacksomeothers", "runtime.goroutineheader", "runtime.typelinksinit",
}

// needless returns what stands in the place of a function that does nothing for a page; never are
// the beginnings of more names, of what this program never comes to.
func needless(name string, never []string) (instead function, ok bool) {
	begins := func(with string) bool { return strings.HasPrefix(name, with) }
	switch {
	case slices.Contains(doNothing, name):
		const address = 8 // bytes: a function takes where to return to off the stack
		return function{code: []instr{
			{op: opGlobalGet, n: stackGlobal}, {op: opI32Const, n: address}, {op: opI32Add}, {op: opGlobalSet, n: stackGlobal},
			{op: opI32Const, n: 0}, {op: opEnd}, // it is over, and need not be resumed
		}}, true
	case !slices.Contains(called, name) && (slices.ContainsFunc(neverCalled, begins) || slices.ContainsFunc(never, begins)):
		return function{code: []instr{{op: opUnreachable}, {op: opEnd}}}, true
	}
	return function{}, false
}

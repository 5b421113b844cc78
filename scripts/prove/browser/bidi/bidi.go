// Package bidi speaks WebDriver BiDi, the W3C's protocol for driving browsers, over
// the WebSocket that a browser offers.
package bidi

import (
	"context"
	"encoding/json"
	"fmt"
	"sync"

	"golang.org/x/net/websocket"
)

// Origin is what a client says that it is; the browser must be told to allow it.
const Origin = "http://localhost"

// Conn is a connection to one browser.
type Conn struct {
	socket *websocket.Conn
	see    func(method string, params json.RawMessage)

	mu      sync.Mutex
	last    int
	waiting map[int]chan answer
	over    error // why it has ended
}

type answer struct {
	ID      int
	Type    string // "success", "error" or "event"
	Result  json.RawMessage
	Error   string
	Message string
	Method  string
	Params  json.RawMessage
}

// Dial connects. The events that are subscribed to go to see, one after the other;
// it must be quick.
func Dial(url string, see func(method string, params json.RawMessage)) (*Conn, error) {
	socket, err := websocket.Dial(url, "", Origin)
	if err != nil {
		return nil, err
	}
	c := &Conn{socket: socket, see: see, waiting: map[int]chan answer{}}
	go c.read()
	return c, nil
}

// Close ends the connection.
func (c *Conn) Close() { _ = c.socket.Close() }

func (c *Conn) read() {
	for {
		var a answer
		if err := websocket.JSON.Receive(c.socket, &a); err != nil {
			c.mu.Lock()
			defer c.mu.Unlock()
			c.over = fmt.Errorf("the connection to the browser has ended: %w", err)
			for _, w := range c.waiting {
				close(w)
			}
			c.waiting = nil
			return
		}
		if a.Type == "event" {
			c.see(a.Method, a.Params)
			continue
		}
		c.mu.Lock()
		w := c.waiting[a.ID]
		delete(c.waiting, a.ID)
		c.mu.Unlock()
		if w != nil {
			w <- a
		}
	}
}

// Call sends a command and returns its result as T.
func Call[T any](ctx context.Context, c *Conn, method string, params any) (result T, err error) {
	w := make(chan answer, 1)
	c.mu.Lock()
	if c.over != nil {
		c.mu.Unlock()
		return result, c.over
	}
	c.last++
	id := c.last
	c.waiting[id] = w
	c.mu.Unlock()
	if err := websocket.JSON.Send(c.socket, map[string]any{"id": id, "method": method, "params": params}); err != nil {
		return result, err
	}
	select {
	case a, ok := <-w:
		if !ok {
			return result, c.over
		}
		if a.Type != "success" {
			return result, fmt.Errorf("%s: %s: %s", method, a.Error, a.Message)
		}
		return result, json.Unmarshal(a.Result, &result)
	case <-ctx.Done():
		return result, fmt.Errorf("%s: %w", method, ctx.Err())
	}
}

// Package webdriver speaks WebDriver, the W3C's protocol for driving browsers, with
// a browser's driver over HTTP.
package webdriver

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
)

// Session is a browser that a driver has started.
type Session struct {
	url string // of the session at its driver
}

// Ready says whether the driver at an address takes new sessions.
func Ready(ctx context.Context, driver string) bool {
	status, err := call[struct{ Ready bool }](ctx, http.MethodGet, driver+"/status", nil)
	return err == nil && status.Ready
}

// New has a driver start a browser with these capabilities.
func New(ctx context.Context, driver string, capabilities map[string]any) (*Session, error) {
	s, err := call[struct{ SessionID string }](ctx, http.MethodPost, driver+"/session",
		map[string]any{"capabilities": map[string]any{"alwaysMatch": capabilities}})
	return &Session{driver + "/session/" + s.SessionID}, err
}

// Get asks for something of the session, such as "/screenshot".
func Get[T any](ctx context.Context, s *Session, path string) (T, error) {
	return call[T](ctx, http.MethodGet, s.url+path, nil)
}

// Post sends a command of the session, such as "/url".
func Post[T any](ctx context.Context, s *Session, path string, params any) (T, error) {
	return call[T](ctx, http.MethodPost, s.url+path, params)
}

// End ends the browser.
func (s *Session) End(ctx context.Context) error {
	_, err := call[any](ctx, http.MethodDelete, s.url, nil)
	return err
}

func call[T any](ctx context.Context, method, url string, params any) (value T, err error) {
	body := &bytes.Buffer{}
	if params != nil {
		if err := json.NewEncoder(body).Encode(params); err != nil {
			return value, err
		}
	}
	request, err := http.NewRequestWithContext(ctx, method, url, body)
	if err != nil {
		return value, err
	}
	response, err := http.DefaultClient.Do(request)
	if err != nil {
		return value, err
	}
	defer response.Body.Close()
	var answer struct{ Value json.RawMessage }
	if err := json.NewDecoder(response.Body).Decode(&answer); err != nil {
		return value, fmt.Errorf("%s: %w", url, err)
	}
	if response.StatusCode != http.StatusOK {
		var fault struct{ Error, Message string }
		_ = json.Unmarshal(answer.Value, &fault)
		return value, fmt.Errorf("%s: %s: %s", url, fault.Error, fault.Message)
	}
	return value, json.Unmarshal(answer.Value, &value)
}

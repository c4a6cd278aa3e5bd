from __future__ import annotations

import os
import socket

import pytest

from club.management.commands import demo


@pytest.fixture
def hosts_served(monkeypatch, settings):
    """hosts_served(address): the names that the server started at this address is told to answer to."""
    settings.ALLOWED_HOSTS = ["localhost"]
    for setting in demo.SETTINGS:
        monkeypatch.setenv(setting, "set before")
    monkeypatch.setenv("HANDWHEEL_HOSTS", "")
    monkeypatch.setattr(os, "execv", lambda path, words: None)
    monkeypatch.setattr(socket, "gethostname", lambda: "bench")
    monkeypatch.setattr(demo, "_own_address", lambda: ["192.0.2.7"])

    def serve(address):
        demo.serve(address)
        return os.environ["HANDWHEEL_HOSTS"].split(",")

    return serve


def test_a_server_for_the_whole_network_answers_to_this_machines_names(hosts_served):
    assert hosts_served("0.0.0.0:8000") == ["localhost", "192.0.2.7", "bench", "bench.local"]


@pytest.mark.parametrize(
    ("address", "host"), [("192.0.2.9:8000", "192.0.2.9"), ("[2001:db8::7]:80", "[2001:db8::7]")]
)
def test_a_server_at_one_address_answers_to_that(hosts_served, address, host):
    assert hosts_served(address) == ["localhost", host]


def test_a_server_keeps_the_settings_that_somebody_made(hosts_served, monkeypatch):
    monkeypatch.delenv("HANDWHEEL_CURRENCY")

    hosts_served("localhost:8000")

    assert os.environ["HANDWHEEL_CLUB"] == "set before"
    assert os.environ["HANDWHEEL_CURRENCY"] == "GBP"


def test_a_machine_without_a_network_has_its_names_still(monkeypatch):
    def unreachable(*_words):
        raise OSError

    monkeypatch.setattr(socket.socket, "connect", unreachable)

    assert demo.hosts_at("0.0.0.0:8000") == [socket.gethostname(), f"{socket.gethostname()}.local"]


def test_the_address_that_is_printed_can_be_opened(monkeypatch, capsys):
    monkeypatch.setattr(demo, "_own_address", lambda: ["192.0.2.7"])
    monkeypatch.setattr(demo, "call_command", lambda *words, **options: None)
    monkeypatch.setattr(demo, "load_demonstration", lambda: False)

    demo.Command().handle(address="0.0.0.0:8000", only_load=True)

    assert "Open http://192.0.2.7:8000/ and sign in" in capsys.readouterr().out
